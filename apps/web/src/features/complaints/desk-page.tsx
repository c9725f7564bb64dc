import { Button, SegmentedControl, TextInput } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useInfiniteQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { PlainWords } from '#web/ui/plain-words.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { DeskTable } from './desk-table.tsx';
import { deskQuery } from './queries.ts';
import { deskRoute } from './routes.ts';

const views = ['open', 'mine', 'short', 'overdue', 'safety', 'closed', 'all'] as const;
type View = (typeof views)[number];
const searchOf: Record<View, ReturnType<typeof deskRoute.useSearch>> = {
  open: {},
  mine: { mine: true },
  short: { clock: 'short' },
  overdue: { clock: 'overdue' },
  safety: { safety: true },
  closed: { state: 'closed' },
  all: { state: 'all' },
};

/** Complaints by the clock that runs out first. */
export const DeskPage = () => {
  const { t } = useTranslation('complaints');
  const format = useFormat();
  const search = deskRoute.useSearch();
  const navigate = useNavigate();
  const view: View = search.mine ? 'mine' : (search.clock ?? (search.safety ? 'safety' : (search.state ?? 'open')));
  const query = Object.fromEntries(Object.entries(search).map(([name, value]) => [name, String(value)]));
  const list = useInfiniteQuery(deskQuery(query));
  const mayWrite = useMay('complaints.write');
  return (
    <>
      <PageHead
        title={t('title')}
        aside={
          mayWrite && (
            <Button
              leftSection={<IconPlus size={18} aria-hidden />}
              renderRoot={(props) => <Link {...props} to="/complaints/new" />}
            >
              {t('new')}
            </Button>
          )
        }
      >
        {t('lead')}
      </PageHead>
      <div style={{ overflowX: 'auto' }} className="no-print">
        <SegmentedControl
          aria-label={t('view.label')}
          data={views.map((value) => ({ value, label: t(`view.${value}`) }))}
          value={view}
          onChange={(value) =>
            void navigate({ to: '/complaints', search: { ...searchOf[value], ...(search.q && { q: search.q }) } })
          }
        />
      </div>
      <TextInput
        key={search.q ?? ''}
        my="md"
        maw="24rem"
        className="no-print"
        label={t('find')}
        defaultValue={search.q ?? ''}
        onKeyDown={(event) => {
          const q = event.currentTarget.value.trim();
          if (event.key === 'Enter')
            void navigate({ to: '/complaints', search: { ...searchOf[view], ...(q && { q }) } });
        }}
      />
      <QueryBoundary
        query={list}
        height={20}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {({ pages }) => {
          const { counts } = pages[0]!;
          return (
            <>
              <Stats>
                <Stat label={t('head.open')} figure={format.count(counts.open)} />
                <Stat label={t('head.overdue')} figure={format.count(counts.overdue)} />
                <Stat label={t('head.short')} figure={format.count(counts.short)} />
                <Stat label={t('head.paused')} figure={format.count(counts.paused)} />
                <Stat label={t('head.safetyUnseen')} figure={format.count(counts.safetyUnseen)} />
              </Stats>
              <PlainWords>{t('meaning')}</PlainWords>
              <DeskTable
                rows={pages.flatMap(({ items }) => items)}
                more={
                  list.hasNextPage
                    ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage }
                    : undefined
                }
              />
            </>
          );
        }}
      </QueryBoundary>
    </>
  );
};
