import { Anchor, Button, SegmentedControl } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { ContainmentLine } from '#contracts/containment.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { containmentsQuery } from './queries.ts';
import { containmentsRoute } from './routes.ts';

/** What is held back, newest first. */
export const ContainmentsPage = () => {
  const { t } = useTranslation('containment');
  const { state } = containmentsRoute.useSearch();
  const navigate = useNavigate();
  const list = useInfiniteQuery(containmentsQuery({ state }));
  const columns = useColumns();
  return (
    <>
      <PageHead
        title={t('title')}
        aside={
          useMay('containment.write') && (
            <Button renderRoot={(props) => <Link {...props} to="/containment/new" />}>{t('new')}</Button>
          )
        }
      >
        {t('lead')}
      </PageHead>
      <SegmentedControl
        aria-label={t('view.label')}
        className="no-print"
        data={(['open', 'closed', 'all'] as const).map((value) => ({ value, label: t(`view.${value}`) }))}
        value={state ?? 'open'}
        onChange={(value) =>
          void navigate({ to: '/containment', search: value === 'open' ? {} : { state: value as 'closed' | 'all' } })
        }
      />{' '}
      <Anchor ml="md" renderRoot={(props) => <Link {...props} to="/containment/alerts" />}>
        {t('alerts.link')}
      </Anchor>
      <QueryBoundary
        query={list}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {({ pages }) => (
          <DataTable
            caption={t('title')}
            hideCaption
            columns={columns}
            rows={pages.flatMap(({ items }) => items)}
            rowKey={({ id }) => id}
            {...(list.hasNextPage && {
              more: { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage },
            })}
          />
        )}
      </QueryBoundary>
    </>
  );
};

const useColumns = (): readonly Column<ContainmentLine>[] => {
  const { t } = useTranslation('containment');
  const format = useFormat();
  return [
    {
      id: 'title',
      header: t('title'),
      rowHeader: true,
      phone: 'title',
      cell: (row) => (
        <>
          <Anchor inherit renderRoot={(props) => <Link {...props} to="/containment/$id" params={{ id: row.id }} />}>
            {row.number}
          </Anchor>{' '}
          {row.title}
        </>
      ),
    },
    { id: 'complaint', header: t('complaint'), cell: (row) => row.complaintNumber ?? '–' },
    { id: 'stated', header: t('stated'), align: 'end', cell: (row) => format.count(row.stated) },
    { id: 'inspected', header: t('inspected'), align: 'end', cell: (row) => format.count(row.inspected) },
    { id: 'found', header: t('found'), align: 'end', cell: (row) => format.count(row.found) },
    { id: 'clean', header: t('clean.title'), cell: (row) => t(row.clean ? 'clean.set' : 'clean.missing') },
    { id: 'owner', header: t('owner'), cell: (row) => row.ownerName },
  ];
};
