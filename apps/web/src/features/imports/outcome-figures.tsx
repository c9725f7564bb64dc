import { useTranslation } from 'react-i18next';
import type { Outcome } from '#contracts/imports.ts';
import { useFormat } from '#web/ui/language.ts';
import classes from './imports.module.css';

/** Rows of the file by what becomes of them; the four add up to all rows. */
export const OutcomeFigures = ({ outcome, done }: { outcome: Outcome; done: boolean }) => {
  const { t } = useTranslation('imports');
  const format = useFormat();
  return (
    <dl className={classes.figures}>
      {(['added', 'changed', 'skipped', 'refused'] as const).map((name) => (
        <div key={name} data-kind={outcome[name] > 0 ? name : undefined}>
          <dt>{t(done ? `done.${name}` : `plan.${name}`)}</dt>
          <dd>{format.count(outcome[name])}</dd>
        </div>
      ))}
      <div>
        <dt>{t('allRows')}</dt>
        <dd>{format.count(outcome.rows)}</dd>
      </div>
    </dl>
  );
};
