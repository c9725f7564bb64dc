import { Button, Checkbox, TextInput } from '@mantine/core';
import { useDebouncedCallback } from '@mantine/hooks';
import { IconPlus, IconSearch } from '@tabler/icons-react';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { KindView } from './kinds.ts';
import classes from './master-data.module.css';
import { rowsQuery } from './queries.ts';
import { kindRoute } from './routes.ts';
import { RowDrawer } from './row-drawer.tsx';
import { useColumns } from './use-columns.tsx';
import { useMayAdd } from './use-may.ts';

/** The rows of one kind, and the one being edited. */
export const RowsSection = ({ view }: { view: KindView }) => {
  const { t } = useTranslation('master-data');
  const { row, on: _, ...filter } = kindRoute.useSearch();
  const navigate = useNavigate();
  const change = (patch: object) =>
    void navigate({ to: '.', search: ((now: object) => ({ ...now, ...patch })) as never, resetScroll: false });
  const search = useDebouncedCallback((q: string) => change({ q: q.trim() || undefined }), 250);
  const list = useInfiniteQuery(rowsQuery(view, filter));
  const mayAdd = useMayAdd(view);
  const columns = useColumns(view, (id) => change({ row: id }));
  const { entity, scope } = view.resource;
  const searchable = entity !== 'cost_rate';

  return (
    <>
      <div className={classes.tools}>
        {searchable && (
          <TextInput
            type="search"
            className={classes.search}
            label={t('search')}
            leftSection={<IconSearch size={18} aria-hidden />}
            defaultValue={filter.q ?? ''}
            onChange={(event) => search(event.currentTarget.value)}
          />
        )}
        {scope === 'plant' && entity !== 'plant' && <PlantPicker />}
        <Checkbox
          label={t('showRetired')}
          checked={filter.retired ?? false}
          onChange={(event) => change({ retired: event.currentTarget.checked || undefined })}
        />
        {entity === 'tool' && (
          <Checkbox
            label={t('onlyDue')}
            checked={filter.due ?? false}
            onChange={(event) => change({ due: event.currentTarget.checked || undefined })}
          />
        )}
        {mayAdd && (
          <Button ml="auto" leftSection={<IconPlus size={18} aria-hidden />} onClick={() => change({ row: 'new' })}>
            {t('add')}
          </Button>
        )}
      </div>
      <QueryBoundary
        query={list}
        height={24}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={
          <EmptyNote title={filter.q || filter.plant || filter.due ? t('noneFits') : t('none')}>
            {filter.q || filter.plant || filter.due ? t('noneFitsText') : mayAdd ? t('noneText') : t('noneTextRead')}
          </EmptyNote>
        }
      >
        {({ pages }) => (
          <DataTable
            caption={t(`kind.${view.name}.title`)}
            hideCaption
            columns={columns}
            rows={pages.flatMap(({ items }) => items)}
            rowKey={({ id }) => id}
            rowClass={({ retiredAt }) => (retiredAt ? classes.retired : undefined)}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
      {row && <RowDrawer key={row} view={view} id={row} onClose={() => change({ row: undefined })} />}
    </>
  );
};
