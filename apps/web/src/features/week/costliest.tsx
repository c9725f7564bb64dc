import { useTranslation } from 'react-i18next';
import type { Week } from '#contracts/analyses.ts';
import { CauseName } from '#web/ui/chart/cause-name.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';

type Row = Week['costliest'][number];

export const Costliest = ({ rows }: { rows: readonly Row[] }) => {
  const { t } = useTranslation('week');
  const format = useFormat();
  const terms = useTerms();
  const columns: Column<Row>[] = [
    {
      id: 'number',
      header: t('costliest.number'),
      rowHeader: true,
      nowrap: true,
      phone: 'title',
      cell: (row) => <AddressLink address={`/failures/${row.id}`}>{row.number}</AddressLink>,
    },
    {
      id: 'way',
      header: t('costliest.way'),
      cell: ({ origin, found }) =>
        `${origin ? terms.stageShort[origin] : t('costliest.unknown')} → ${terms.stageShort[found]}`,
    },
    {
      id: 'gates',
      header: t('costliest.gates'),
      align: 'end',
      cell: ({ gatesPassed }) => (gatesPassed === null ? t('costliest.unknown') : format.count(gatesPassed)),
    },
    {
      id: 'cause',
      header: t('causes.cause'),
      cell: ({ cause }) => (cause ? <CauseName cause={cause} /> : t('causes.none')),
    },
    {
      id: 'terminals',
      header: t('costliest.terminals'),
      align: 'end',
      cell: ({ terminals }) => format.count(terminals),
    },
    {
      id: 'booked',
      header: t('causes.booked'),
      align: 'end',
      cell: ({ bookedMinor: amountMinor, currency }) => <MoneyText money={{ amountMinor, currency }} basis="booked" />,
    },
    {
      id: 'estimated',
      header: t('causes.estimated'),
      align: 'end',
      cell: ({ estimateMinor: amountMinor, currency }) => (
        <MoneyText money={{ amountMinor, currency }} basis="estimated" named />
      ),
    },
  ];
  return <DataTable caption={t('costliest.caption')} columns={columns} rows={rows} rowKey={({ id }) => id} />;
};
