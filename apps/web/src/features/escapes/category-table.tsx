import { useTranslation } from 'react-i18next';
import type { z } from 'zod';
import type { Costs } from '#contracts/analyses.ts';
import type { CostCategory } from '#contracts/taxonomy.ts';
import { bookedMark, estimateMark } from '#web/app/theme.ts';
import { SvgPatterns, svgFill } from '#web/ui/chart/svg-patterns.tsx';
import { useTerms } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';

interface Row {
  /** Null for the standard costs, which have no category. */
  category: z.infer<typeof CostCategory> | null;
  bookedMinor: number;
  estimatedMinor: number;
}

/** Booked filled, estimated hatched, one below the other: they are not to be read as a sum. */
const Bars = ({ row, largest }: { row: Row; largest: number }) => (
  <svg width="100%" height="22" aria-hidden="true" style={{ minWidth: '8rem' }}>
    <SvgPatterns marks={[estimateMark]} />
    <rect y="1" height="9" width={`${(100 * row.bookedMinor) / largest}%`} fill={svgFill(bookedMark)} />
    <rect y="12" height="9" width={`${(100 * row.estimatedMinor) / largest}%`} fill={svgFill(estimateMark)} />
  </svg>
);

export const CategoryTable = ({ costs: { byCategory, standardMinor, currency } }: { costs: Costs }) => {
  const { t } = useTranslation('escapes');
  const terms = useTerms();
  const rows: Row[] = [
    ...byCategory,
    ...(standardMinor === 0 ? [] : [{ category: null, bookedMinor: 0, estimatedMinor: standardMinor }]),
  ];
  const largest = Math.max(1, ...rows.flatMap((row) => [row.bookedMinor, row.estimatedMinor]));
  const columns: Column<Row>[] = [
    {
      id: 'category',
      header: t('category.name'),
      rowHeader: true,
      phone: 'title',
      cell: ({ category }) => (category === null ? t('category.standard') : terms.costCategory[category]),
    },
    {
      id: 'booked',
      header: t('cost.booked'),
      align: 'end',
      sortBy: (row) => row.bookedMinor,
      cell: (row) => <MoneyText money={{ amountMinor: row.bookedMinor, currency }} basis="booked" />,
    },
    {
      id: 'estimated',
      header: t('cost.estimated'),
      align: 'end',
      sortBy: (row) => row.estimatedMinor,
      cell: (row) => <MoneyText money={{ amountMinor: row.estimatedMinor, currency }} basis="estimated" named />,
    },
    { id: 'bars', header: t('category.bars'), phone: 'hide', cell: (row) => <Bars row={row} largest={largest} /> },
  ];
  return (
    <DataTable
      caption={t('category.caption')}
      columns={columns}
      rows={rows}
      rowKey={({ category }) => category ?? 'standard'}
    />
  );
};
