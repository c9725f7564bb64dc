import { useTranslation } from 'react-i18next';
import type { Costs } from '#contracts/analyses.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './escapes.module.css';

type Row = Costs['byFound'][number];

interface Props {
  costs: Costs;
  filter: FilterValues;
  write: (factor: number) => string;
}

export const FactorTable = ({ costs: { currency, byFound }, filter, write }: Props) => {
  const { t } = useTranslation('escapes');
  const format = useFormat();
  const terms = useTerms();
  const money = (amountMinor: number, basis: 'booked' | 'estimated') => (
    <MoneyText money={{ amountMinor, currency }} basis={basis} named />
  );
  const columns: Column<Row>[] = [
    {
      id: 'stage',
      header: t('factor.stage'),
      rowHeader: true,
      phone: 'title',
      cell: ({ stage }) => terms.stage[stage],
    },
    {
      id: 'reports',
      header: t('factor.reports'),
      align: 'end',
      sortBy: (row) => row.reports,
      cell: (row) => <ReportsLink filter={{ ...filter, found: [row.stage] }}>{format.count(row.reports)}</ReportsLink>,
    },
    {
      id: 'booked',
      header: t('cost.booked'),
      align: 'end',
      sortBy: (row) => row.bookedMinor,
      cell: (row) => money(row.bookedMinor, 'booked'),
    },
    {
      id: 'estimated',
      header: t('cost.estimated'),
      align: 'end',
      sortBy: (row) => row.estimateMinor,
      cell: (row) => money(row.estimateMinor, 'estimated'),
    },
    {
      id: 'perTerminal',
      header: t('factor.perTerminal'),
      align: 'end',
      sortBy: (row) => row.perTerminal?.bookedMinor ?? null,
      cell: ({ perTerminal }) =>
        perTerminal && (
          <>
            {money(Math.round(perTerminal.bookedMinor), 'booked')}{' '}
            <small>{t('factor.from', { count: perTerminal.reports })}</small>
          </>
        ),
    },
    {
      id: 'factor',
      header: t('factor.measured'),
      align: 'end',
      sortBy: (row) => row.factor.value,
      cell: (row) => <EstimateText estimate={row.factor} write={write} writeLimit={write} brief />,
    },
    {
      id: 'ruleOfTen',
      header: t('factor.ruleOfTen'),
      align: 'end',
      cell: (row) => <span className={classes.practice}>{write(row.ruleOfTen)}</span>,
    },
  ];
  return <DataTable caption={t('factor.caption')} columns={columns} rows={byFound} rowKey={({ stage }) => stage} />;
};
