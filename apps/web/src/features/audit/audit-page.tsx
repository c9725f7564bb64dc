import { Anchor } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { AuditEntry } from '#contracts/audit.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { AuditFilterBar } from './audit-filter.tsx';
import { Changes } from './changes.tsx';
import { auditQuery } from './queries.ts';
import { auditRoute } from './routes.ts';
import { useWords } from './use-words.ts';

export const AuditPage = () => {
  const { t } = useTranslation('audit');
  const filter = auditRoute.useSearch();
  const list = useInfiniteQuery(auditQuery(filter));
  const columns = useColumns();
  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <AuditFilterBar filter={filter} />
      <QueryBoundary
        query={list}
        height={30}
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
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
    </>
  );
};

const useColumns = (): readonly Column<AuditEntry>[] => {
  const { t } = useTranslation('audit');
  const format = useFormat();
  const words = useWords();
  const plants = new Map(usePlants().map((plant) => [plant.id, plant]));
  return [
    {
      id: 'when',
      header: t('when'),
      rowHeader: true,
      phone: 'title',
      nowrap: true,
      cell: (entry) => (
        <time dateTime={entry.at}>{format.instant(entry.at, plants.get(entry.plantId ?? '')?.zone)}</time>
      ),
    },
    { id: 'who', header: t('who'), cell: (entry) => entry.actor },
    {
      id: 'what',
      header: t('what'),
      cell: (entry) => (
        <>
          {words.entity(entry.entity)}{' '}
          <Anchor
            component={Link}
            to="/audit"
            search={{ entity: [entry.entity], entityId: entry.entityId } as never}
            aria-label={t('historyOf', { label: entry.label })}
          >
            {entry.label}
          </Anchor>
          {': '}
          {words.action(entry.action)}
        </>
      ),
    },
    {
      id: 'plant',
      header: t('plant'),
      cell: (entry) => (entry.plantId === null ? t('group') : (plants.get(entry.plantId)?.name ?? '')),
    },
    { id: 'changes', header: t('changes'), cell: (entry) => <Changes entry={entry} /> },
  ];
};
