import { useTranslation } from 'react-i18next';
import type { TrackRecord } from '#contracts/evidence.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { Stat, Stats } from '#web/ui/stat.tsx';
import classes from './record.module.css';

interface Props {
  record: TrackRecord;
  /** All plants of the person and all time: what mutes the suggestion or not. */
  whole: boolean;
}

/** Is it better than always naming the most frequent cause? In so many words, then in figures. */
export const Verdict = ({ record, whole }: Props) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const { accuracy, baseline, advantage, better } = record;
  const percent = (share: number) => format.percent(share, 0);
  const points = (share: number) => format.number(100 * share, { maximumFractionDigits: 1, signDisplay: 'exceptZero' });
  const verdict = () => {
    if (better === 'too_few' || advantage.value === null) return t('record.tooFew');
    const figures = {
      points: points(advantage.value),
      low: points(advantage.interval.low),
      high: points(advantage.interval.high ?? 1),
    };
    if (better === 'better') return t('record.better', figures);
    return t(whole ? 'record.notBetter' : 'record.notBetterHere', figures);
  };
  const figure = (value: number | null, digits = 3) =>
    value === null ? '–' : format.number(value, { maximumFractionDigits: digits });
  return (
    <>
      <p className={classes.verdict} data-better={better}>
        {accuracy.value !== null &&
          `${t('record.right', { share: percent(accuracy.value), cases: format.count(record.cases) })} `}
        {baseline.value !== null && `${t('record.baseline', { share: percent(baseline.value) })} `}
        <strong>{verdict()}</strong>
      </p>
      <Stats>
        <Stat
          label={t('record.accuracy')}
          figure={<EstimateText estimate={accuracy} write={percent} writeLimit={percent} brief />}
        />
        <Stat
          label={t('record.baselineShort')}
          figure={<EstimateText estimate={baseline} write={percent} writeLimit={percent} brief />}
        />
        <Stat
          label={t('record.advantage')}
          figure={
            <EstimateText
              estimate={advantage}
              write={(share) => t('record.points', { points: points(share) })}
              writeLimit={points}
              brief
            />
          }
        />
        <Stat
          label={t('record.logLoss')}
          figure={<EstimateText estimate={record.logLoss} brief />}
          note={t('record.logLossNote', { value: figure(record.baselineLogLoss.value, 2) })}
        />
        <Stat
          label={t('record.brier')}
          figure={<EstimateText estimate={record.brier} brief />}
          note={t('record.brierNote', { value: figure(record.reliability, 4) })}
        />
        <Stat
          label={t('record.calibrationError')}
          figure={figure(record.calibrationError)}
          note={t('record.calibrationNote')}
        />
      </Stats>
    </>
  );
};
