import { useTranslation } from 'react-i18next';
import { disciplines } from '#contracts/case-parts.ts';
import classes from './cases.module.css';

/** Nine boxes, filled where signed, and the same in words. */
export const Progress = ({ signed }: { signed: readonly number[] }) => {
  const { t } = useTranslation('cases');
  return (
    <span className={classes.progress}>
      <span className="visually-hidden">
        {signed.length > 0 ? t('signedList', { list: signed.map((it) => `D${it}`).join(', ') }) : t('noneSigned')}
      </span>
      {disciplines.map((discipline) => (
        <span key={discipline} aria-hidden data-signed={signed.includes(discipline) || undefined}>
          {discipline}
        </span>
      ))}
    </span>
  );
};
