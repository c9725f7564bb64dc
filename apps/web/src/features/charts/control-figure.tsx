import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Charts } from '#contracts/charts.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { useCaptions } from '#web/ui/filter/use-captions.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './charts.module.css';
import { controlConfig } from './control-config.ts';

type Point = Charts['points'][number];

export const ControlFigure = ({ data, filter }: { data: Charts; filter: FilterValues }) => {
  const { t } = useTranslation('charts');
  const format = useFormat();
  const captions = useCaptions(data);
  const { points, markers, patterns, phases, kind } = data;
  const nameOf = ({ from, report }: Point) => (report ? format.day(from) : format.week(from));
  const unit = t(`unit.${kind ?? 'u'}`);
  const config = controlConfig(
    { points, markers },
    {
      labels: points.map(nameOf),
      value: unit,
      centre: t('centre'),
      limits: t('limit'),
      markers: {
        action: t('mark.action'),
        service: t('mark.service'),
        reelLot: t('mark.lot'),
        housingLot: t('mark.lot'),
      },
    },
    format.significant,
  );
  const optional = (value: number | null) => (value === null ? t('noLimit') : format.significant(value));
  const columns: Column<Point>[] = [
    {
      id: 'name',
      header: t(points[0]?.report ? 'column.day' : 'column.week'),
      rowHeader: true,
      phone: 'title',
      cell: nameOf,
    },
    {
      id: 'reports',
      header: t('column.reports'),
      align: 'end',
      cell: ({ report, reports, from, to }) =>
        report ? (
          <Anchor inherit renderRoot={(props) => <Link {...props} to="/failures/$id" params={{ id: report.id }} />}>
            {report.number}
          </Anchor>
        ) : (
          <ReportsLink filter={{ ...filter, from, to }}>{format.count(reports)}</ReportsLink>
        ),
    },
    { id: 'value', header: unit, align: 'end', cell: ({ value }) => format.significant(value) },
    { id: 'centre', header: t('centre'), align: 'end', cell: ({ centre }) => format.significant(centre) },
    { id: 'low', header: t('lower'), align: 'end', cell: ({ low }) => optional(low) },
    { id: 'high', header: t('upper'), align: 'end', cell: ({ high }) => optional(high) },
    {
      id: 'rules',
      header: t('column.patterns'),
      cell: ({ rules }) => (
        <span className={classes.out}>{format.list(rules.map((rule) => t(`rule.${rule}`, { count: 8 })))}</span>
      ),
    },
  ];
  const names =
    phases.length > 1
      ? phases.map((phase) => t(`phase.${phase.because}`, { from: format.day(phase.from), label: phase.label ?? '' }))
      : [];
  return (
    <>
      <ChartFigure
        title={t(`figure.${kind ?? 'u'}`)}
        spoken={t('spoken', { points: points.length, count: patterns.length })}
        config={config}
        captions={{ unit, ...captions, interval: t('limits.said') }}
        table={<DataTable caption={t('table')} columns={columns} rows={points} rowKey={({ key }) => key} />}
      />
      {names.length > 0 && <p>{t('phases', { list: format.list(names) })}</p>}
    </>
  );
};
