import type { ReactNode } from 'react';
import classes from './stat.module.css';

interface Props {
  label: string;
  /** The figure with its unit. */
  figure: ReactNode;
  interval?: ReactNode;
  change?: ReactNode;
  /** Opens the reports behind the figure. */
  link?: ReactNode;
  note?: ReactNode;
}

/** One headline figure: what it is, the figure, how sure it is, how it moved, and the way to its reports. */
export const Stat = ({ label, figure, interval, change, link, note }: Props) => (
  <div className={classes.stat}>
    <dt>{label}</dt>
    <dd className={classes.figure}>{figure}</dd>
    {interval && <dd className={classes.small}>{interval}</dd>}
    {change && <dd className={classes.small}>{change}</dd>}
    {note && <dd className={classes.small}>{note}</dd>}
    {link && <dd className={classes.link}>{link}</dd>}
  </div>
);

export const Stats = ({ children }: { children: ReactNode }) => <dl className={classes.stats}>{children}</dl>;
