import { Anchor } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { ImportSummary } from '#contracts/imports.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { importsQuery } from './queries.ts';
import { importRoute } from './routes.ts';
import { isRunning } from './steps.ts';
import { UploadForm } from './upload-form.tsx';

export const ImportsPage = () => {
  const { t } = useTranslation('imports');
  const mayRun = useMay('imports.run');
  const list = useInfiniteQuery(importsQuery);
  const columns = useColumns();
  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      {mayRun && <UploadForm />}
      <QueryBoundary
        query={list}
        height={20}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {({ pages }) => (
          <DataTable
            caption={t('caption')}
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

const useColumns = (): readonly Column<ImportSummary>[] => {
  const { t } = useTranslation('imports');
  const format = useFormat();
  const terms = useTerms();
  const count = (pick: 'added' | 'changed' | 'refused') => (row: ImportSummary) =>
    row.outcome ? format.count(row.outcome[pick]) : '';
  return [
    {
      id: 'file',
      header: t('file'),
      rowHeader: true,
      phone: 'title',
      cell: (row) => (
        <Anchor inherit renderRoot={(props) => <Link {...props} to={importRoute.to} params={{ id: row.id }} />}>
          {row.fileName}
        </Anchor>
      ),
    },
    { id: 'kind', header: t('kind'), cell: (row) => terms.importKind[row.kind] },
    { id: 'source', header: t('source'), cell: (row) => row.source },
    {
      id: 'state',
      header: t('state'),
      cell: (row) =>
        isRunning(row)
          ? `${t(`states.${row.state}`)} ${format.percent(row.progress.share, 0)}`
          : t(`states.${row.state}`),
    },
    { id: 'added', header: t('added'), align: 'end', cell: count('added') },
    { id: 'changed', header: t('changed'), align: 'end', cell: count('changed') },
    { id: 'refused', header: t('refused'), align: 'end', cell: count('refused') },
    { id: 'by', header: t('by'), cell: (row) => row.createdBy },
    { id: 'at', header: t('at'), nowrap: true, cell: (row) => format.instant(row.createdAt) },
  ];
};
