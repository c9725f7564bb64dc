import { Anchor, Badge, Button, Checkbox, Drawer, Text, TextInput } from '@mantine/core';
import { useDebouncedCallback, useMediaQuery } from '@mantine/hooks';
import { IconPlus, IconSearch } from '@tabler/icons-react';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Person } from '#contracts/people.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { GrantsText } from './grants-text.tsx';
import classes from './people.module.css';
import { PeopleNav } from './people-nav.tsx';
import { PersonForm } from './person-form.tsx';
import { peopleQuery } from './queries.ts';
import { peopleRoute } from './routes.ts';

export const PeoplePage = () => {
  const { t } = useTranslation('people');
  const { person: opened, ...filter } = peopleRoute.useSearch();
  const navigate = useNavigate();
  const narrow = useMediaQuery('(max-width: 48em)');
  const change = (patch: object) =>
    void navigate({ to: '.', search: ((now: object) => ({ ...now, ...patch })) as never, resetScroll: false });
  const search = useDebouncedCallback((q: string) => change({ q: q.trim() || undefined }), 250);
  const list = useInfiniteQuery(peopleQuery(filter));
  const columns = useColumns((id) => change({ person: id }));
  const rows = list.data?.pages.flatMap(({ items }) => items) ?? [];
  const person = rows.find(({ id }) => id === opened);
  const close = () => change({ person: undefined });

  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <PeopleNav />
      <div className={classes.tools}>
        <TextInput
          type="search"
          className={classes.search}
          label={t('search')}
          leftSection={<IconSearch size={18} aria-hidden />}
          defaultValue={filter.q ?? ''}
          onChange={(event) => search(event.currentTarget.value)}
        />
        <Checkbox
          label={t('showRetired')}
          checked={filter.retired ?? false}
          onChange={(event) => change({ retired: event.currentTarget.checked || undefined })}
        />
        <Button ml="auto" leftSection={<IconPlus size={18} aria-hidden />} onClick={() => change({ person: 'new' })}>
          {t('add')}
        </Button>
      </div>
      <QueryBoundary
        query={list}
        height={24}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('noneFits')}>{t('noneFitsText')}</EmptyNote>}
      >
        {() => (
          <DataTable
            caption={t('title')}
            hideCaption
            columns={columns}
            rows={rows}
            rowKey={({ id }) => id}
            rowClass={({ retiredAt }) => (retiredAt ? classes.quiet : undefined)}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
      <Drawer
        opened={opened === 'new' || person !== undefined}
        onClose={close}
        position="right"
        size={narrow ? '100%' : 'lg'}
        title={
          <Text component="span" fw={650} fz="lg">
            {person?.name ?? t('newPerson')}
          </Text>
        }
        closeButtonProps={{ 'aria-label': t('close') }}
      >
        <PersonForm key={`${person?.id} ${person?.version}`} person={person} onDone={close} />
      </Drawer>
    </>
  );
};

const useColumns = (onOpen: (id: string) => void): readonly Column<Person>[] => {
  const { t } = useTranslation('people');
  const format = useFormat();
  return [
    {
      id: 'name',
      header: t('name'),
      rowHeader: true,
      phone: 'title',
      cell: (row) => (
        <>
          <Anchor component="button" type="button" fw={600} ta="left" onClick={() => onOpen(row.id)}>
            {row.name}
          </Anchor>{' '}
          {row.retiredAt && (
            <Badge variant="default" size="sm">
              {t('retired')}
            </Badge>
          )}
        </>
      ),
    },
    { id: 'email', header: t('email'), cell: (row) => row.email },
    { id: 'roles', header: t('roles'), cell: (row) => <GrantsText grants={row.grants} /> },
    {
      id: 'seen',
      header: t('lastSeen'),
      cell: (row) => (row.lastSeenAt ? format.instant(row.lastSeenAt) : t('never')),
    },
  ];
};
