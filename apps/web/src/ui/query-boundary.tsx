/** Loading, error and empty, once for every page. Data already shown is never blanked by a refetch. */
import { Skeleton, Stack } from '@mantine/core';
import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useTranslation } from 'react-i18next';
import { EmptyNote } from './empty-note.tsx';
import { ProblemNote } from './problem.tsx';
import classes from './query-boundary.module.css';

interface Props<Data> {
  query: UseQueryResult<Data>;
  children: (data: Data) => ReactNode;
  /** Shown instead of the children when `isEmpty` says so. */
  empty?: ReactNode;
  isEmpty?: (data: Data) => boolean;
  /** Height of the skeleton in rem, near to what will stand there. */
  height?: number;
}

export const QueryBoundary = <Data,>({ query, children, empty, isEmpty, height = 12 }: Props<Data>) => {
  const { t } = useTranslation('ui');
  const retry = () => void query.refetch();

  if (query.data === undefined) {
    if (query.isError) return <ProblemNote error={query.error} onRetry={retry} />;
    return (
      <div aria-busy>
        <span role="status" className="visually-hidden">
          {t('loading')}
        </span>
        <Stack gap="sm" aria-hidden>
          <Skeleton height="1.25rem" width="40%" />
          <Skeleton height={`${height}rem`} />
        </Stack>
      </div>
    );
  }
  return (
    <div className={classes.kept} aria-busy={query.isFetching} data-stale={query.isPlaceholderData || undefined}>
      {query.isFetching && <span className={classes.refreshing} role="status" aria-label={t('refreshing')} />}
      {query.isError && <ProblemNote error={query.error} onRetry={retry} />}
      {isEmpty?.(query.data) ? empty === undefined ? <EmptyNote /> : empty : children(query.data)}
    </div>
  );
};
