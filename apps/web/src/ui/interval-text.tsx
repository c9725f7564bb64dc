import { useTranslation } from 'react-i18next';
import type { Interval } from '#contracts/shared/estimate.ts';
import classes from './figures.module.css';
import { useFormat } from './language.ts';

interface Props {
  interval: Interval | null;
  /** How the limits are written; the unit stands with the figure. */
  write?: (value: number) => string;
}

/** `3.1 to 5.9`, with its confidence spoken and shown on hover. */
export const IntervalText = ({ interval, write }: Props) => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  if (!interval) return null;
  const show = write ?? format.significant;
  const confidence = format.percent(interval.confidence, 0);
  const text =
    interval.high === null
      ? t('interval.atLeast', { low: show(interval.low) })
      : t('interval.range', { low: show(interval.low), high: show(interval.high) });
  return (
    <span className={classes.interval} title={t('interval.confidence', { confidence })}>
      {text}
      <span className="visually-hidden"> ({t('interval.confidence', { confidence })})</span>
    </span>
  );
};
