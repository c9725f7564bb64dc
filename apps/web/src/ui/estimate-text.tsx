import type { Estimate } from '#contracts/shared/estimate.ts';
import classes from './figures.module.css';
import { IntervalText } from './interval-text.tsx';
import { useFormat } from './language.ts';
import { NotComputable } from './not-computable.tsx';

interface Props {
  estimate: Estimate;
  /** How the figure is written, with its unit. */
  write?: (value: number) => string;
  /** How the limits are written, without the unit. */
  writeLimit?: (value: number) => string;
  /** In a table cell. */
  brief?: boolean;
}

/** A figure with its interval, or the reason why there is none. */
export const EstimateText = ({ estimate, write, writeLimit, brief }: Props) => {
  const format = useFormat();
  if (estimate.value === null) return <NotComputable reason={estimate.reason} brief={brief} />;
  return (
    <span className={classes.estimate}>
      <span>{(write ?? format.significant)(estimate.value)}</span>{' '}
      <IntervalText interval={estimate.interval} write={writeLimit} />
    </span>
  );
};
