import { Button } from '@mantine/core';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { signalName } from '#contracts/signal-words.ts';
import { endSilence, type Signals } from '#contracts/signals.ts';
import { call } from '#web/ui/http.ts';
import { useFormat, useLocale } from '#web/ui/language.ts';
import { useMay } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetSignals } from './queries.ts';
import classes from './signals.module.css';

type Row = Signals['silenced'][number];

export const SilencedList = ({ data: { silenced } }: { data: Signals }) => {
  const { t } = useTranslation('signals');
  if (silenced.length === 0) return null;
  return (
    <section>
      <h2>{t('silenced.title')}</h2>
      <ul className={classes.list}>
        {silenced.map((row) => (
          <SilencedItem key={row.silence.id} row={row} />
        ))}
      </ul>
    </section>
  );
};

const SilencedItem = ({ row: { silence, signal } }: { row: Row }) => {
  const { t } = useTranslation('signals');
  const format = useFormat();
  const locale = useLocale();
  const may = useMay('signals.write', silence.plantId ?? undefined);
  const forget = useForgetSignals();
  const end = useMutation({
    mutationFn: () => call(endSilence, { params: { id: silence.id }, version: silence.version }),
    onSuccess: forget,
  });
  return (
    <li className={classes.item}>
      <p className={classes.sentence}>{signal ? signalName(signal, locale) : silence.label}</p>
      <p className={classes.facts}>
        {t('silenced.facts', {
          reason: silence.reason,
          by: silence.silencedBy,
          until: format.day(silence.until),
          observed: format.count(silence.observed),
          ratio: format.number(silence.ratio, { maximumFractionDigits: 1 }),
        })}
      </p>
      {end.error && <ProblemNote error={end.error} />}
      {may && (
        <Button
          variant="default"
          size="compact-sm"
          className="no-print"
          loading={end.isPending}
          onClick={() => end.mutate()}
        >
          {t('silenced.end')}
        </Button>
      )}
    </li>
  );
};
