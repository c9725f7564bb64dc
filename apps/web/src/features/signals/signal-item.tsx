import { Button } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { signalName, signalSentence } from '#contracts/signal-words.ts';
import type { Signal, SignalFound, Signals } from '#contracts/signals.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat, useLocale } from '#web/ui/language.ts';
import { useMay } from '#web/ui/person.ts';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { reportsOf } from './reports-of.ts';
import classes from './signals.module.css';

interface Props {
  signal: Signal;
  data: Signals;
  filter: FilterValues;
  onSilence: () => void;
}

export const SignalItem = ({ signal, data, filter, onSilence }: Props) => {
  const { t } = useTranslation('signals');
  const format = useFormat();
  const locale = useLocale();
  const may = useMay('signals.write', signal.plantId ?? undefined);
  const link = (found: SignalFound, count: number) => (
    <ReportsLink
      filter={reportsOf(found, filter, data.period)}
      label={t('open', { count, name: signalName(found, locale) })}
    >
      {t('reports', { count })}
    </ReportsLink>
  );
  const basis =
    signal.basis === 'exposure'
      ? t('basis.exposure', { confidence: format.percent(signal.interval.confidence, 0) })
      : t('basis.share', { peers: signal.peers ?? 0, confidence: format.percent(signal.interval.confidence, 0) });
  return (
    <li className={classes.item}>
      <p className={classes.sentence}>{signalSentence(signal, locale)}</p>
      <p className={classes.facts}>
        {link(signal, signal.observed)} · {basis}
        {signal.since.reason !== null && ` · ${t(`since.${signal.since.reason === 'steady' ? 'steady' : 'unknown'}`)}`}
        {signal.back && ` · ${t('back')}`}
      </p>
      {signal.echoes.length > 0 && (
        <details className={classes.echoes}>
          <summary>{t('echoes', { count: signal.echoes.length })}</summary>
          <ul>
            {signal.echoes.map((echo) => (
              <li key={echo.key}>
                {signalSentence(echo, locale)} {t('shared', { count: echo.shared })} {link(echo, echo.observed)}
              </li>
            ))}
          </ul>
        </details>
      )}
      {may && (
        <Button variant="default" size="compact-sm" className="no-print" onClick={onSilence}>
          {t('silence.press')}
        </Button>
      )}
    </li>
  );
};
