import { useTranslation } from 'react-i18next';
import type { Pareto, ParetoBar } from '#contracts/analyses.ts';
import { ChangeText } from '#web/ui/change-text.tsx';
import { Swatch } from '#web/ui/chart/svg-patterns.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { IntervalText } from '#web/ui/interval-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './causes.module.css';
import { markOf } from './mark-of.ts';
import { useFigures } from './use-figures.ts';

interface Props {
  pareto: Pareto;
  caption: string;
  labelOf: (bar: Pick<ParetoBar, 'key' | 'label'>) => string;
  /** The filter that opens the reports of one bar. */
  filterOf: (bar: ParetoBar) => FilterValues;
  all: FilterValues;
  /** The filter that opens the reports of the bars not shown. */
  rest: FilterValues;
}

export const ParetoTable = ({ pareto, caption, labelOf, filterOf, all, rest }: Props) => {
  const { t } = useTranslation('causes');
  const format = useFormat();
  const { write } = useFigures(pareto);
  const { currency, dimension, total, other } = pareto;
  const money = (amountMinor: number, basis: 'booked' | 'estimated') => (
    <MoneyText money={{ amountMinor, currency }} basis={basis} named />
  );

  const columns: Column<ParetoBar>[] = [
    {
      id: 'name',
      header: t(`dimension.${dimension}`),
      rowHeader: true,
      phone: 'title',
      sortBy: labelOf,
      cell: (bar) => (
        <span style={{ display: 'inline-flex', gap: '0.5em', alignItems: 'center' }}>
          <Swatch mark={markOf(dimension, bar.key)} />
          {labelOf(bar)}
        </span>
      ),
    },
    {
      id: 'reports',
      header: t('column.reports'),
      align: 'end',
      sortBy: (bar) => bar.reports,
      cell: (bar) => (
        <ReportsLink filter={filterOf(bar)} label={t('column.open', { count: bar.reports, name: labelOf(bar) })}>
          {format.count(bar.reports)}
        </ReportsLink>
      ),
    },
    {
      id: 'terminals',
      header: t('column.terminals'),
      align: 'end',
      sortBy: (bar) => bar.terminals,
      cell: (bar) => format.count(bar.terminals),
    },
    ...(pareto.measure === 'reports' || pareto.measure === 'terminals'
      ? []
      : [
          {
            id: 'value',
            header: t(`measure.${pareto.measure}`),
            align: 'end' as const,
            sortBy: (bar: ParetoBar) => bar.value,
            cell: (bar: ParetoBar) =>
              bar.value === null ? (
                bar.reason && <NotComputable reason={bar.reason} brief />
              ) : (
                <>
                  {write(bar.value)} <IntervalText interval={bar.interval} write={write} />
                </>
              ),
          },
        ]),
    {
      id: 'share',
      header: t('column.share'),
      align: 'end',
      sortBy: (bar) => bar.share,
      cell: (bar) =>
        bar.share !== null && (
          <>
            {format.percent(bar.share)} <IntervalText interval={bar.shareInterval} write={format.percent} />
          </>
        ),
    },
    {
      id: 'cumulative',
      header: t('column.cumulative'),
      align: 'end',
      phone: 'hide',
      cell: (bar) => bar.cumulativeShare !== null && format.percent(bar.cumulativeShare),
    },
    {
      id: 'top',
      header: t('column.top', { count: pareto.top }),
      align: 'end',
      sortBy: (bar) => bar.topProbability,
      cell: (bar) =>
        bar.topProbability !== null && (
          <span
            className={classes.chance}
            data-sure={bar.topProbability >= 0.95 || undefined}
            style={{ '--chance': bar.topProbability } as React.CSSProperties}
          >
            {format.chance(bar.topProbability)}
          </span>
        ),
    },
    {
      id: 'rate',
      header: t('column.rate'),
      align: 'end',
      sortBy: (bar) => bar.rate.value,
      cell: (bar) => <EstimateText estimate={bar.rate} brief />,
    },
    {
      id: 'booked',
      header: t('column.booked'),
      align: 'end',
      sortBy: (bar) => bar.bookedMinor,
      cell: (bar) => money(bar.bookedMinor, 'booked'),
    },
    {
      id: 'estimated',
      header: t('column.estimated'),
      align: 'end',
      sortBy: (bar) => bar.estimateMinor,
      cell: (bar) => money(bar.estimateMinor, 'estimated'),
    },
    ...(pareto.compared
      ? [
          {
            id: 'change',
            header: t('column.change'),
            cell: (bar: ParetoBar) => bar.change && <ChangeText change={bar.change} brief />,
          },
        ]
      : []),
  ];

  const sum = (part: Pareto['total'] | NonNullable<Pareto['other']>) => ({
    terminals: format.count(part.terminals),
    booked: money(part.bookedMinor, 'booked'),
    estimated: money(part.estimateMinor, 'estimated'),
  });
  const footers = [
    ...(other
      ? [
          {
            ...sum(other),
            name: t('other', { count: other.bars }),
            reports: <ReportsLink filter={rest}>{format.count(other.reports)}</ReportsLink>,
            share: other.share !== null && format.percent(other.share),
          },
        ]
      : []),
    {
      ...sum(total),
      name: t('total'),
      reports: <ReportsLink filter={all}>{format.count(total.reports)}</ReportsLink>,
    },
  ];

  return (
    <DataTable caption={caption} columns={columns} rows={pareto.bars} rowKey={(bar) => bar.key} footers={footers} />
  );
};
