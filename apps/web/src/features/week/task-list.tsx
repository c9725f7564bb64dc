import type { ReactNode } from 'react';
import { AddressLink } from '#web/ui/reports-link.tsx';
import classes from './week.module.css';

export interface Task {
  readonly key: string;
  readonly count: string;
  readonly text: string;
  readonly note?: ReactNode;
  readonly link: string;
  readonly urgent?: boolean;
}

/** Counts with what they ask for; each opens its list. */
export const TaskList = ({ tasks, nothing }: { tasks: readonly Task[]; nothing: string }) => {
  if (tasks.length === 0) return <p>{nothing}</p>;
  return (
    <ul className={classes.tasks}>
      {tasks.map(({ key, count, text, note, link, urgent }) => (
        <li key={key} data-urgent={urgent || undefined}>
          <span className={classes.count}>{count}</span>
          <AddressLink address={link}>{text}</AddressLink>
          {note && <small>{note}</small>}
        </li>
      ))}
    </ul>
  );
};
