import { Anchor, Button, Group } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { exportActions } from '#contracts/actions.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { addressOf } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { ActionForm } from './action-form.tsx';
import { ActionsTable } from './actions-table.tsx';
import { FilterRow } from './filter-row.tsx';
import { actionsQuery, countQuery, type Filter } from './queries.ts';
import { actionsRoute } from './routes.ts';

export const ActionsPage = () => {
  const { t } = useTranslation('actions');
  const filter: Filter = actionsRoute.useSearch();
  const navigate = useNavigate();
  const [opening, setOpening] = useState(false);
  const list = useInfiniteQuery(actionsQuery(filter));
  const mayOpen = useMay('actions.write');
  return (
    <>
      <PageHead
        title={t('title')}
        aside={
          mayOpen && (
            <Button leftSection={<IconPlus size={18} aria-hidden />} onClick={() => setOpening(true)}>
              {t('new')}
            </Button>
          )
        }
      >
        {t('lead')}
      </PageHead>
      <FilterRow filter={filter} onChange={(search) => void navigate({ to: '/actions', search, resetScroll: false })} />
      <Headlines filter={filter} />
      <QueryBoundary
        query={list}
        height={20}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {({ pages }) => (
          <ActionsTable
            caption={t('title')}
            rows={pages.flatMap(({ items }) => items)}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
      <Group mt="md" className="no-print">
        {(['csv', 'xlsx'] as const).map((format) => (
          <Anchor key={format} href={addressOf(exportActions, { query: { ...filter, format } })} download>
            {t('export', { format: format.toUpperCase() })}
          </Anchor>
        ))}
      </Group>
      {opening && <ActionForm onDone={() => setOpening(false)} />}
    </>
  );
};

const Headlines = ({ filter }: { filter: Filter }) => {
  const { t } = useTranslation('actions');
  const format = useFormat();
  const count = useQuery(countQuery(filter)).data;
  if (!count) return null;
  const ages = count.ageing
    .map(({ days, actions }) => t(`age.${days}`, { actions: format.count(actions) }))
    .join(' · ');
  return (
    <Stats>
      <Stat label={t('head.open')} figure={format.count(count.open)} note={ages} />
      <Stat label={t('head.overdue')} figure={format.count(count.overdue)} />
      <Stat label={t('head.toVerify')} figure={format.count(count.toVerify)} />
      <Stat label={t('head.reopened')} figure={format.count(count.reopened)} />
    </Stats>
  );
};
