import { useTranslation } from 'react-i18next';
import type { AuditEntry } from '#contracts/audit.ts';
import classes from './audit.module.css';
import { type Difference, differences } from './differences.ts';
import { useValueText } from './use-value-text.ts';
import { useWords } from './use-words.ts';

/** So many differences are shown at once; more are folded away. */
const atOnce = 4;

export const Changes = ({ entry }: { entry: AuditEntry }) => {
  const { t } = useTranslation('audit');
  const all = differences(entry);
  if (all.length === 0) return <span className={classes.quiet}>{t('noDetail')}</span>;
  const isNew = entry.before === null;
  const rest = all.slice(atOnce);
  return (
    <>
      <Differences list={all.slice(0, atOnce)} isNew={isNew} plantId={entry.plantId} />
      {rest.length > 0 && (
        <details className={classes.more}>
          <summary>{t('more', { count: rest.length })}</summary>
          <Differences list={rest} isNew={isNew} plantId={entry.plantId} />
        </details>
      )}
    </>
  );
};

interface Props {
  list: readonly Difference[];
  isNew: boolean;
  /** Whose currency amounts are in. */
  plantId: string | null;
}
const Differences = ({ list, isNew, plantId }: Props) => {
  const { t } = useTranslation('audit');
  const words = useWords();
  const say = useValueText();
  return (
    <ul className={classes.changes}>
      {list.map(({ field, before, after }) => (
        <li key={field}>
          <span className={classes.field}>{words.field(field)}:</span>{' '}
          {!isNew && (
            <>
              <del>{say(field, before, plantId)}</del> <span aria-hidden>→</span>{' '}
              <span className="visually-hidden">{t('became')}</span>
            </>
          )}
          <ins>{say(field, after, plantId)}</ins>
        </li>
      ))}
    </ul>
  );
};
