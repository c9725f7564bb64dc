import { useTranslation } from 'react-i18next';
import type { Reason } from '#contracts/shared/estimate.ts';
import classes from './figures.module.css';
import { useTerms } from './language.ts';

/** Stands where a figure would: why there is none. Never a zero. */
export const NotComputable = ({ reason }: { reason: Reason }) => {
  const { t } = useTranslation('ui');
  const terms = useTerms();
  return <span className={classes.none}>{t('notComputable', { reason: terms.reason[reason] })}</span>;
};
