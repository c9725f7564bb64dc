import { useTranslation } from 'react-i18next';
import type { Rates } from '#contracts/analyses.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useCaptions } from '#web/ui/filter/use-captions.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { rateConfig } from './rate-config.ts';
import { RateTable } from './rate-table.tsx';

export const RateView = ({ rates, filter }: { rates: Rates; filter: FilterValues }) => {
  const { t } = useTranslation('causes');
  const format = useFormat();
  const captions = useCaptions(rates);
  const { bucket, buckets, byPlant, overall, sigma, exposureScope, period } = rates;
  const name = (from: string) =>
    bucket === 'week' ? format.week(from) : format.day(from, { month: 'short', year: 'numeric' });
  const rate = t('unit.rate');
  const overallText =
    overall.dpmo.value === null ? '' : t('rate.overall', { rate: format.significant(overall.dpmo.value) });
  const confidence = format.percent(overall.dpmo.interval?.confidence ?? 0.95, 0);

  return (
    <>
      <ChartFigure
        title={t('rate.title')}
        spoken={t('rate.spoken', { overall: overallText })}
        config={rateConfig(
          rates,
          { buckets: buckets.map(({ from }) => name(from)), rate, overall: overallText },
          format.significant,
        )}
        captions={{ unit: rate, ...captions, interval: t('rate.interval', { confidence }) }}
        table={
          <RateTable
            caption={t(`rate.by.${bucket}`)}
            first={t(`rate.${bucket}`)}
            rows={buckets.map((row) => ({
              ...row,
              key: row.from,
              name: name(row.from),
              filter: { ...filter, from: row.from, to: row.to },
            }))}
          />
        }
      />
      <p>
        {t('rate.whole')} <EstimateText estimate={overall.dpmo} />{' '}
        {sigma !== null && t('rate.sigma', { sigma: format.number(sigma, { maximumFractionDigits: 2 }) })}{' '}
        {exposureScope === 'wider' && t('rate.wider')}
      </p>
      {byPlant.length > 1 && (
        <RateTable
          caption={t('rate.byPlant')}
          first={t('dimension.plant')}
          rows={byPlant.map((row) => ({
            ...row,
            key: row.plantId,
            name: row.plantCode,
            filter: { ...filter, ...period, plant: [row.plantId] },
          }))}
        />
      )}
    </>
  );
};
