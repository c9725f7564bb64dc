import { useTranslation } from 'react-i18next';
import type { Gates } from '#contracts/gates.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';

type Row = Gates['found'][number];

/** What one fault costs where it is found: the input of the chain, booked and estimated apart. */
export const FoundCostsTable = ({ found, currency }: { found: Gates['found']; currency: string }) => {
  const { t } = useTranslation('gates');
  const format = useFormat();
  const terms = useTerms();
  const money = (minor: number | null, basis: 'booked' | 'estimated') =>
    minor === null ? (
      <NotComputable reason="no_cost" brief />
    ) : (
      <MoneyText money={{ amountMinor: Math.round(minor), currency }} basis={basis} named />
    );
  const columns: Column<Row>[] = [
    {
      id: 'stage',
      header: t('found.stage'),
      rowHeader: true,
      phone: 'title',
      cell: ({ stage }) => terms.stage[stage],
    },
    {
      id: 'reports',
      header: t('found.reports'),
      align: 'end',
      cell: ({ reports, basis }) =>
        basis === 'standard' || basis === 'neighbour' ? t(`found.${basis}`) : format.count(reports),
    },
    {
      id: 'booked',
      header: t('found.booked'),
      align: 'end',
      cell: ({ bookedMinor }) => money(bookedMinor, 'booked'),
    },
    {
      id: 'estimated',
      header: t('found.estimated'),
      align: 'end',
      cell: ({ estimateMinor }) => money(estimateMinor, 'estimated'),
    },
  ];
  return <DataTable caption={t('found.caption')} columns={columns} rows={found} rowKey={({ stage }) => stage} />;
};
