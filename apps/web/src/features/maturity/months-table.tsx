import { useTranslation } from 'react-i18next';
import type { BuildMonthRow, Maturity } from '#contracts/maturity.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './maturity.module.css';
import { monthText } from './months.ts';

export const MonthsTable = ({ rows }: { rows: Maturity['rows'] }) => {
  const { t } = useTranslation('maturity');
  const format = useFormat();
  const columns: Column<BuildMonthRow>[] = [
    {
      id: 'month',
      header: t('months.month'),
      rowHeader: true,
      phone: 'title',
      nowrap: true,
      sortBy: ({ month }) => month,
      cell: ({ month }) => monthText(format, month),
    },
    {
      id: 'produced',
      header: t('months.produced'),
      align: 'end',
      cell: ({ produced }) =>
        produced === null ? <NotComputable reason="no_production" brief /> : format.count(produced),
    },
    {
      id: 'reports',
      header: t('months.reports'),
      align: 'end',
      cell: ({ cumulative, filter, mature }) => {
        const count = <AddressLink address={`/failures?${filter}`}>{format.count(cumulative.at(-1) ?? 0)}</AddressLink>;
        return mature ? (
          count
        ) : (
          <span className={classes.hatched} title={t('months.young')}>
            {count}
            <span className="visually-hidden"> ({t('months.young')})</span>
          </span>
        );
      },
    },
    {
      id: 'maturity',
      header: t('months.maturity'),
      align: 'end',
      cell: ({ maturity }) =>
        maturity === null ? <NotComputable reason="too_few" brief /> : format.percent(maturity, 0),
    },
    {
      id: 'final',
      header: t('months.final'),
      align: 'end',
      cell: ({ final }) => (
        <EstimateText
          estimate={final}
          write={(value) => format.significant(value)}
          writeLimit={(value) => format.count(value)}
          brief
        />
      ),
    },
    {
      id: 'error',
      header: t('months.error'),
      align: 'end',
      phone: 'hide',
      cell: ({ standardError }) => (standardError === null ? '–' : format.significant(standardError, 2)),
    },
    {
      id: 'perMillion',
      header: t('months.perMillion'),
      align: 'end',
      sortBy: ({ finalPerMillion }) => finalPerMillion.value,
      cell: ({ finalPerMillion }) => <EstimateText estimate={finalPerMillion} brief />,
    },
  ];
  return (
    <DataTable
      caption={t('months.caption')}
      columns={columns}
      rows={rows.toReversed()}
      rowKey={({ month }) => month}
      rowClass={({ mature }) => (mature ? undefined : classes.young)}
    />
  );
};
