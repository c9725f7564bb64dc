import { useTranslation } from 'react-i18next';
import type { Week } from '#contracts/analyses.ts';
import { causeMarks, otherMark } from '#web/app/theme.ts';
import { ChangeText } from '#web/ui/change-text.tsx';
import { CauseName } from '#web/ui/chart/cause-name.tsx';
import { SvgPatterns, svgFill } from '#web/ui/chart/svg-patterns.tsx';
import { IntervalText } from '#web/ui/interval-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './week.module.css';

type Row = Week['topCauses'][number];

const ShareBar = ({ row, largest }: { row: Row; largest: number }) => {
  const mark = row.cause ? causeMarks[row.cause] : otherMark;
  const percent = (share: number) => `${(100 * share) / largest}%`;
  const high = row.shareInterval.high ?? 1;
  return (
    <span className={classes.share} aria-hidden="true">
      <svg width="100%" height="100%">
        <title>{''}</title>
        <SvgPatterns marks={[mark]} />
        <rect width={percent(row.share)} height="100%" fill={svgFill(mark)} />
        <line x1={percent(row.shareInterval.low)} x2={percent(high)} y1="50%" y2="50%" stroke="#fff" strokeWidth="5" />
        <line
          x1={percent(row.shareInterval.low)}
          x2={percent(high)}
          y1="50%"
          y2="50%"
          stroke="var(--ink-strong)"
          strokeWidth="2"
        />
      </svg>
    </span>
  );
};

export const TopCauses = ({ week: { topCauses, currency } }: { week: Pick<Week, 'topCauses' | 'currency'> }) => {
  const { t } = useTranslation('week');
  const format = useFormat();
  const largest = Math.max(0.01, ...topCauses.map(({ shareInterval }) => shareInterval.high ?? 1));
  const columns: Column<Row>[] = [
    {
      id: 'cause',
      header: t('causes.cause'),
      rowHeader: true,
      phone: 'title',
      cell: ({ cause }) => (cause ? <CauseName cause={cause} /> : t('causes.none')),
    },
    {
      id: 'reports',
      header: t('causes.reports'),
      align: 'end',
      sortBy: (row) => row.reports,
      cell: (row) => <AddressLink address={`/failures?${row.filter}`}>{format.count(row.reports)}</AddressLink>,
    },
    {
      id: 'share',
      header: t('causes.share'),
      cell: (row) => (
        <>
          {format.percent(row.share, 0)}{' '}
          <IntervalText interval={row.shareInterval} write={(share) => format.percent(share, 0)} />
          <ShareBar row={row} largest={largest} />
        </>
      ),
    },
    {
      id: 'booked',
      header: t('causes.booked'),
      align: 'end',
      sortBy: (row) => row.bookedMinor,
      cell: (row) => <MoneyText money={{ amountMinor: row.bookedMinor, currency }} basis="booked" short />,
    },
    {
      id: 'estimated',
      header: t('causes.estimated'),
      align: 'end',
      sortBy: (row) => row.estimateMinor,
      cell: (row) => <MoneyText money={{ amountMinor: row.estimateMinor, currency }} basis="estimated" short named />,
    },
    { id: 'change', header: t('causes.change'), cell: (row) => <ChangeText change={row.change} brief /> },
  ];
  return (
    <DataTable
      caption={t('causes.caption')}
      columns={columns}
      rows={topCauses}
      rowKey={({ cause }) => cause ?? 'none'}
    />
  );
};
