import { useTranslation } from 'react-i18next';
import classes from './cautions.module.css';
import type { messages } from './messages.en.ts';

export type Caution = keyof typeof messages.caution;

/** The cautions of the trade, shown where the work can hurt someone. */
export const Cautions = ({ about }: { about: readonly Caution[] }) => {
  const { t } = useTranslation('ui');
  return (
    <aside className={classes.cautions} aria-label={t('cautionsLabel')}>
      {about.map((caution) => (
        <p key={caution}>{t(`caution.${caution}`)}</p>
      ))}
    </aside>
  );
};
