import { useTranslation } from 'react-i18next';
import type { Reason } from '#contracts/shared/estimate.ts';
import classes from './figures.module.css';
import { useTerms } from './language.ts';

/** Stands where a figure would: why there is none, in a word or two where space is short. Never a zero. */
export const NotComputable = ({ reason, brief }: { reason: Reason; brief?: boolean }) => {
  const { t } = useTranslation('ui');
  const terms = useTerms();
  if (brief)
    return (
      <span className={classes.none} title={t('notComputable', { reason: terms.reason[reason] })}>
        {terms.reasonShort[reason]}
      </span>
    );
  return <span className={classes.none}>{t('notComputable', { reason: terms.reason[reason] })}</span>;
};
