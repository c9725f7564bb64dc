import { Button, Group } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import { countQuery, listQuery } from '../queries.ts';
import { failuresRoute } from '../routes.ts';
import { CavityMap } from './cavity-map.tsx';
import { Count } from './count.tsx';
import { ExportLinks } from './export-links.tsx';
import classes from './list.module.css';
import { NoReports } from './no-reports.tsx';
import { SavedFilters } from './saved-filters.tsx';
import { SearchBox } from './search-box.tsx';
import { useColumns } from './use-columns.tsx';

export const FailuresPage = () => {
  const { t } = useTranslation('failures');
  const filter = failuresRoute.useSearch();
  const list = useInfiniteQuery(listQuery(filter));
  const count = useQuery(countQuery(filter));
  const columns = useColumns();
  const [housing] = filter.housing?.length === 1 ? filter.housing : [];
  const mayWrite = useMay('failures.write');

  return (
    <>
      <PageHead
        title={t('list.title')}
        aside={
          mayWrite && (
            <Button component={Link} to="/failures/new" leftSection={<IconPlus size={18} aria-hidden />}>
              {t('list.new')}
            </Button>
          )
        }
      />
      <Group className={classes.tools} gap="sm">
        <SearchBox />
        <SavedFilters />
        <ExportLinks filter={filter} />
      </Group>
      <FilterBar />
      <Count query={count} />
      {housing !== undefined && housing !== 'none' && <CavityMap filter={filter} housing={housing} />}
      <QueryBoundary
        query={list}
        height={30}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<NoReports filtered={Object.keys(filter).length > 0} />}
      >
        {({ pages }) => (
          <DataTable
            caption={t('list.caption')}
            hideCaption
            columns={columns}
            rows={pages.flatMap(({ items }) => items)}
            rowKey={(row) => row.id}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
    </>
  );
};
