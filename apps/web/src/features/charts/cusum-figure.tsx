import { useTranslation } from 'react-i18next';
import type { Charts } from '#contracts/charts.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { useCaptions } from '#web/ui/filter/use-captions.ts';
import { useFormat } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { cusumConfig } from './cusum-config.ts';

export const CusumFigure = ({ data }: { data: Charts }) => {
  const { t } = useTranslation('charts');
  const format = useFormat();
  const captions = useCaptions(data);
  const { cusum, points } = data;
  if (cusum.reason !== null) return null;
  const froms = new Map(points.map(({ key, from }) => [key, from]));
  const nameOf = (key: string) => format.day(froms.get(key) ?? data.period.from);
  const one = (value: number) => format.number(value, { maximumFractionDigits: 1 });
  const first = cusum.points.find(({ signal }) => signal !== null);
  type Row = (typeof cusum.points)[number];
  const columns: Column<Row>[] = [
    { id: 'day', header: t('column.day'), rowHeader: true, phone: 'title', cell: ({ key }) => nameOf(key) },
    { id: 'high', header: t('cusum.up'), align: 'end', cell: ({ high }) => one(high) },
    { id: 'low', header: t('cusum.down'), align: 'end', cell: ({ low }) => one(low) },
    {
      id: 'since',
      header: t('cusum.since'),
      cell: ({ worse, sinceKey }) =>
        sinceKey === null ? '' : t(worse ? 'cusum.worse' : 'cusum.better', { day: nameOf(sinceKey) }),
    },
  ];
  return (
    <>
      <ChartFigure
        title={t('cusum.title')}
        spoken={
          first?.sinceKey
            ? t(first.worse ? 'cusum.worse' : 'cusum.better', { day: nameOf(first.sinceKey) })
            : t('cusum.quiet')
        }
        height={16}
        config={cusumConfig(cusum.points, cusum.limit, {
          labels: cusum.points.map(({ key }) => nameOf(key)),
          up: t('cusum.up'),
          down: t('cusum.down'),
          axis: t('cusum.axis'),
        })}
        captions={{ unit: t('cusum.unit'), ...captions }}
        table={<DataTable caption={t('cusum.title')} columns={columns} rows={cusum.points} rowKey={({ key }) => key} />}
      />
      <p>
        {t('cusum.design', {
          shift: one(cusum.shift),
          every: format.count(cusum.falseAlarmEvery),
          after: one(cusum.foundAfter),
          limit: one(cusum.limit),
        })}
      </p>
    </>
  );
};
