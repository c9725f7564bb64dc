import type { UseQueryResult } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { useFormat } from '#web/ui/language.ts';
import classes from './list.module.css';

/** How much the filter selects, spoken when it changes. */
export const Count = ({ query }: { query: UseQueryResult<{ reports: number; terminals: number }> }) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  return (
    <p className={classes.count} role="status">
      {query.data &&
        t('list.count', {
          reports: t('list.reports', { count: query.data.reports, text: format.count(query.data.reports) }),
          terminals: t('list.terminals', { count: query.data.terminals, text: format.count(query.data.terminals) }),
        })}
    </p>
  );
};
