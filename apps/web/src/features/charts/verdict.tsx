import { useTranslation } from 'react-i18next';
import type { Charts } from '#contracts/charts.ts';
import { useFormat } from '#web/ui/language.ts';
import classes from './charts.module.css';

/** What the chart says in words: which one, why, what it found, and when not to trust it. */
export const Verdict = ({ data }: { data: Charts }) => {
  const { t } = useTranslation('charts');
  const format = useFormat();
  const { suggested, kind, patterns, falseAlarmEvery, weeksWithoutProduction, exposureScope } = data;
  const last = data.points.at(-1);
  const now = patterns.filter(({ atKey }) => atKey === last?.key);
  return (
    <div className={classes.verdict}>
      <p>
        <strong>
          {now.length > 0
            ? t('verdict.now', { patterns: format.list(now.map(({ rule }) => t(`rule.${rule}`, { count: 8 }))) })
            : patterns.length > 0
              ? t('verdict.before', { count: patterns.length })
              : t('verdict.quiet')}
        </strong>{' '}
        {kind && t(`explain.${kind}`)}
      </p>
      <p>
        {suggested &&
          t(`because.${suggested.because}`, {
            perWeek: format.number(suggested.reportsPerWeek, { maximumFractionDigits: 1 }),
          })}{' '}
        {data.corrected &&
          suggested?.dispersionIndex != null &&
          t('corrected', { index: format.number(suggested.dispersionIndex, { maximumFractionDigits: 1 }) })}{' '}
        {kind !== suggested?.kind && suggested && t('chosenOtherwise', { kind: t(`kind.${suggested.kind}`) })}{' '}
        {falseAlarmEvery === null ? t('falseAlarmsUnknown') : t('falseAlarms', { every: falseAlarmEvery })}
      </p>
      {weeksWithoutProduction > 0 && <p>{t('withoutProduction', { count: weeksWithoutProduction })}</p>}
      {exposureScope === 'wider' && <p>{t('wider')}</p>}
    </div>
  );
};
