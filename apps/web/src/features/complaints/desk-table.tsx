import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { ComplaintLine } from '#contracts/complaints.ts';
import { useFormat } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { ClockMark } from './clock-mark.tsx';

interface Props {
  rows: readonly ComplaintLine[];
  more?: { load: () => void; loading: boolean } | undefined;
}

export const DeskTable = ({ rows, more }: Props) => {
  const { t } = useTranslation('complaints');
  return (
    <DataTable
      caption={t('title')}
      hideCaption
      columns={useColumns()}
      rows={rows}
      rowKey={({ id }) => id}
      {...(more && { more })}
    />
  );
};

const useColumns = (): readonly Column<ComplaintLine>[] => {
  const { t } = useTranslation('complaints');
  const format = useFormat();
  const plants = usePlants();
  const zoneOf = (plantId: string) => plants.find(({ id }) => id === plantId)?.zone;
  return [
    {
      id: 'title',
      header: t('column.title'),
      rowHeader: true,
      phone: 'title',
      cell: (row) => (
        <>
          <Anchor inherit renderRoot={(props) => <Link {...props} to="/complaints/$id" params={{ id: row.id }} />}>
            {row.number}
          </Anchor>{' '}
          {row.title}
          {row.safety && <strong> · {t(row.safetySeen ? 'safety.short' : 'safety.unseen')}</strong>}
        </>
      ),
    },
    {
      id: 'customer',
      header: t('column.customer'),
      cell: (row) => [row.customerCode, row.customerRef].filter(Boolean).join(' · '),
    },
    { id: 'part', header: t('column.part'), cell: (row) => row.partCode ?? '–' },
    {
      id: 'clock',
      header: t('column.clock'),
      cell: ({ next, closedAt, paused }) =>
        closedAt ? (
          t('closedOn', { day: format.day(closedAt.slice(0, 10)) })
        ) : next ? (
          <>
            {t(`reply.${next.kind}`)} <ClockMark state={next.state} minutesLeft={next.minutesLeft} />
          </>
        ) : paused ? (
          t('clockState.paused')
        ) : (
          t('allAnswered')
        ),
    },
    {
      id: 'due',
      header: t('column.due'),
      nowrap: true,
      cell: ({ next, plantId }) => (next ? format.instant(next.dueAt, zoneOf(plantId)) : '–'),
    },
    { id: 'owner', header: t('column.owner'), cell: (row) => row.next?.ownerName ?? row.ownerName },
    { id: 'reports', header: t('column.reports'), align: 'end', cell: (row) => format.count(row.reports) },
  ];
};
