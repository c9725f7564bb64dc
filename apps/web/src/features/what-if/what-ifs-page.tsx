import { Anchor, Button, Checkbox } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { WhatIfSummary } from '#contracts/what-if.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { whatIfsQuery } from './queries.ts';
import { newWhatIfRoute, whatIfRoute, whatIfsRoute } from './routes.ts';

export const WhatIfsPage = () => {
  const { t } = useTranslation('what-if');
  const search = whatIfsRoute.useSearch();
  const navigate = useNavigate({ from: whatIfsRoute.fullPath });
  const list = useInfiniteQuery(whatIfsQuery(search));
  const columns = useColumns();
  const { plant } = search;
  return (
    <>
      <PageHead
        title={t('title')}
        aside={
          <Button renderRoot={(props) => <Link {...props} to={newWhatIfRoute.to} search={{ plant }} />}>
            {t('new.title')}
          </Button>
        }
      >
        {t('lead')}
      </PageHead>
      <section aria-label={t('list.filter')} style={{ marginBottom: '1rem' }} className="no-print">
        <PlantPicker />
        <Checkbox
          mt="sm"
          label={t('list.retired')}
          checked={search.retired === true}
          onChange={({ currentTarget: { checked } }) =>
            void navigate({ search: (now) => ({ ...now, retired: checked || undefined }) })
          }
        />
      </section>
      <QueryBoundary
        query={list}
        height={20}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('list.none')}>{t('list.noneText')}</EmptyNote>}
      >
        {({ pages }) => (
          <DataTable
            caption={t('list.caption')}
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

const useColumns = (): readonly Column<WhatIfSummary>[] => {
  const { t } = useTranslation('what-if');
  const format = useFormat();
  const years = (value: number) => format.significant(value, 2);
  return [
    {
      id: 'name',
      header: t('keep.name'),
      rowHeader: true,
      phone: 'title',
      cell: ({ id, name }) => (
        <Anchor inherit renderRoot={(props) => <Link {...props} to={whatIfRoute.to} params={{ id }} />}>
          {name}
        </Anchor>
      ),
    },
    { id: 'plant', header: t('list.plant'), cell: ({ plantCode }) => plantCode },
    {
      id: 'net',
      header: t('outcome.net'),
      align: 'end',
      cell: ({ together: { netPerYear }, currency }) => {
        const short = (minor: number) => format.moneyShort({ amountMinor: Math.round(minor), currency });
        return <EstimateText estimate={netPerYear} write={(minor) => `~ ${short(minor)}`} writeLimit={short} brief />;
      },
    },
    {
      id: 'payback',
      header: t('outcome.payback'),
      align: 'end',
      cell: ({ together: { paybackYears } }) =>
        paybackYears.value === null ? (
          t('outcome.never')
        ) : (
          <EstimateText estimate={paybackYears} write={years} writeLimit={years} brief />
        ),
    },
    {
      id: 'pays',
      header: t('list.pays'),
      align: 'end',
      cell: ({ together: { probabilityPays } }) => (probabilityPays === null ? '–' : format.drawn(probabilityPays)),
    },
    { id: 'at', header: t('list.computed'), cell: ({ computedAt }) => format.instant(computedAt) },
    { id: 'by', header: t('list.by'), cell: ({ createdBy }) => createdBy },
  ];
};
