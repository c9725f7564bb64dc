import { Button } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import type { ReviewLine } from '#contracts/review.ts';
import { useFormat } from '#web/ui/language.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { pastReviewsQuery } from './queries.ts';
import classes from './review.module.css';
import { useReviewWords } from './use-words.ts';

/** Every review that is kept of these plants, newest week first. */
export const PastReviews = ({ plant }: { plant: string[] | undefined }) => {
  const { t } = useTranslation('review');
  const words = useReviewWords();
  const format = useFormat();
  const query = useInfiniteQuery(pastReviewsQuery(plant));
  const columns: Column<ReviewLine>[] = [
    {
      id: 'week',
      header: t('past.week'),
      rowHeader: true,
      nowrap: true,
      phone: 'title',
      cell: ({ id, weekFrom }) => <AddressLink address={`/review/${id}`}>{format.week(weekFrom)}</AddressLink>,
    },
    {
      id: 'of',
      header: t('past.of'),
      cell: ({ group, plantCodes }) => (group ? words.group : format.list(plantCodes)),
    },
    { id: 'edition', header: t('past.edition'), align: 'end', cell: ({ edition }) => format.count(edition) },
    { id: 'decisions', header: t('past.decisions'), align: 'end', cell: ({ decisions }) => format.count(decisions) },
    {
      id: 'state',
      header: t('past.state'),
      cell: ({ closedBy, closedAt }) =>
        closedBy && closedAt ? words.stamp.closed(closedBy, format.instant(closedAt)) : words.stamp.open,
    },
  ];
  return (
    <section className={`${classes.part} no-print`}>
      <h2>{t('past.title')}</h2>
      <QueryBoundary
        query={query}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<p>{t('past.none')}</p>}
      >
        {({ pages }) => (
          <DataTable
            caption={t('past.title')}
            hideCaption
            columns={columns}
            rows={pages.flatMap(({ items }) => items)}
            rowKey={({ id }) => id}
          />
        )}
      </QueryBoundary>
      {query.hasNextPage && (
        <Button variant="default" mt="sm" onClick={() => void query.fetchNextPage()} loading={query.isFetchingNextPage}>
          {t('past.more')}
        </Button>
      )}
    </section>
  );
};
