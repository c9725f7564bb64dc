import { useTranslation } from 'react-i18next';
import type { Maturity } from '#contracts/maturity.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import type { Captions } from '#web/ui/chart/figure.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PlainWords } from '#web/ui/plain-words.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { lifeConfig } from './chart-configs.ts';
import { million } from './months.ts';

interface Props {
  life: Maturity['life'];
  captions: Pick<Captions, 'period' | 'filter'>;
}

/** Months in service whose fitted share is written out. */
const written = [3, 6, 12, 24, 36];
type CurvePoint = Maturity['life']['weibull']['curve'][number];

/** Whether failures grow more or less frequent with age, as far as the interval of the shape says so. */
const growthOf = ({ weibull: { shape } }: Maturity['life']): 'rises' | 'falls' | 'steady' | null => {
  if (shape.value === null) return null;
  if (shape.interval.low > 1) return 'rises';
  return shape.interval.high !== null && shape.interval.high < 1 ? 'falls' : 'steady';
};

export const LifeView = ({ life, captions }: Props) => {
  const { t } = useTranslation('maturity');
  const format = useFormat();
  const { steps, weibull } = life;
  if (steps.length === 0) return null;
  const seen = steps.at(-1)?.months ?? 0;
  const { shape } = weibull;
  const grows = growthOf(life);
  const perMillion = (share: number) => format.significant(share * million, 3);
  const columns: Column<CurvePoint>[] = [
    {
      id: 'months',
      header: t('life.months'),
      rowHeader: true,
      phone: 'title',
      cell: ({ months }) => t(months > seen ? 'life.beyond' : 'life.month', { count: months }),
    },
    {
      id: 'failed',
      header: t('life.failed'),
      align: 'end',
      cell: ({ failed }) => <EstimateText estimate={failed} write={perMillion} writeLimit={perMillion} />,
    },
  ];
  return (
    <>
      <ChartFigure
        title={grows ? t(`life.title.${grows}`) : t('life.title.unknown')}
        spoken={t('life.spoken')}
        config={lifeConfig(life, {
          seen: t('life.seen'),
          limits: t('life.limits'),
          fitted: t('life.fitted'),
          axis: t('perMillion'),
          months: t('life.months'),
        })}
        captions={{ unit: t('perMillion'), ...captions, interval: t('interval95') }}
        table={
          <DataTable
            caption={t('life.caption')}
            columns={columns}
            rows={weibull.curve.filter(({ months }) => written.includes(months))}
            rowKey={({ months }) => String(months)}
          />
        }
      />
      <PlainWords>
        {t('life.words', { reports: format.count(life.reports), units: format.count(life.units) })}{' '}
        {grows && (
          <>
            {t('life.shape')}{' '}
            <EstimateText
              estimate={shape}
              write={(value) => format.significant(value, 2)}
              writeLimit={(value) => format.significant(value, 2)}
            />
            . {t(`life.grows.${grows}`)}{' '}
          </>
        )}
        {t('life.distrust')}
      </PlainWords>
    </>
  );
};
