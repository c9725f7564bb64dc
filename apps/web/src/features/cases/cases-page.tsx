import { Button, Group, MultiSelect, TextInput } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { usePlants } from '#web/ui/lookup.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { CasesTable } from './cases-table.tsx';
import { OpenForm } from './open-form.tsx';
import { casesQuery } from './queries.ts';
import { casesRoute } from './routes.ts';

const states = ['open', 'closed', 'dropped'] as const;

export const CasesPage = () => {
  const { t } = useTranslation('cases');
  const { complaint, ...filter } = casesRoute.useSearch();
  const navigate = useNavigate();
  const [opening, setOpening] = useState(complaint !== undefined);
  const list = useInfiniteQuery(casesQuery(filter));
  const plants = usePlants();
  const mayOpen = useMay('cases.write');
  const show = (change: object) =>
    void navigate({ to: '/cases', search: { ...filter, ...change }, resetScroll: false, replace: true });
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
      <Group align="end" mb="md" className="no-print">
        <TextInput
          label={t('search')}
          defaultValue={filter.q ?? ''}
          onBlur={(event) => show({ q: event.target.value || undefined })}
          onKeyDown={(event) => event.key === 'Enter' && show({ q: event.currentTarget.value || undefined })}
        />
        <MultiSelect
          w="100%"
          maw="16rem"
          label={t('state')}
          data={states.map((state) => ({ value: state, label: t(`states.${state}`) }))}
          value={filter.state ?? []}
          onChange={(state) => show({ state: state.length ? state : undefined })}
        />
        <MultiSelect
          w="100%"
          maw="16rem"
          label={t('plant')}
          data={plants.map(({ id, code }) => ({ value: id, label: code }))}
          value={filter.plant ?? []}
          onChange={(plant) => show({ plant: plant.length ? plant : undefined })}
        />
      </Group>
      <QueryBoundary
        query={list}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {({ pages }) => (
          <CasesTable
            rows={pages.flatMap(({ items }) => items)}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
      {opening && <OpenForm complaintId={complaint ?? null} onDone={() => setOpening(false)} />}
    </>
  );
};
