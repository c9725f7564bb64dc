import { List } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Maturity } from '#contracts/maturity.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useCaptions } from '#web/ui/filter/use-captions.ts';
import { useFormat } from '#web/ui/language.ts';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { PlainWords } from '#web/ui/plain-words.tsx';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { buildMonthsConfig, forecastConfig } from './chart-configs.ts';
import { LifeView } from './life-view.tsx';
import { lastDayOf, monthText } from './months.ts';
import { MonthsTable } from './months-table.tsx';
import { TriangleTable } from './triangle-table.tsx';

export const MaturityView = ({ data }: { data: Maturity }) => {
  const { t } = useTranslation('maturity');
  const format = useFormat();
  const { forecast, rows, leftOut, toCome, reports } = data;
  const captions = useCaptions(data);
  const left = leftOut.reduce((sum, one) => sum + one.reports, 0);
  const undated = leftOut.find(({ reason }) => reason === 'no_build_date')?.reports ?? 0;
  const monthNames = rows.map(({ month }) => monthText(format, month));
  const horizon = forecast.months.length;

  return (
    <>
      <Stats>
        <Stat
          label={t('stat.counted')}
          figure={format.count(reports)}
          note={t('stat.until', { day: format.day(lastDayOf(data.lastMonth)) })}
        />
        <Stat
          label={t('stat.toCome')}
          figure={
            toCome.standardError === null ? (
              <NotComputable reason="too_few" brief />
            ) : (
              <em>~ {format.significant(toCome.value, 2)}</em>
            )
          }
          note={
            toCome.standardError !== null &&
            t('stat.standardError', { error: format.significant(toCome.standardError, 2) })
          }
        />
        <Stat
          label={t('stat.forecast', { count: horizon })}
          figure={
            <EstimateText estimate={forecast.total} write={(value) => `~ ${format.significant(value, 2)}`} brief />
          }
          note={t('stat.forecastNote')}
        />
        <Stat
          label={t('stat.left')}
          figure={format.count(left)}
          note={undated > 0 && t('stat.short', { share: format.percent(undated / (undated + reports), 0) })}
        />
      </Stats>
      {leftOut.length > 0 && (
        <List size="sm" mb="lg">
          {leftOut.map(({ reason, reports: count, filter }) => (
            <List.Item key={filter}>
              <AddressLink address={`/failures?${filter}`}>
                {t(`left.${reason}`, { count, month: monthText(format, data.recordsFrom) })}
              </AddressLink>
            </List.Item>
          ))}
        </List>
      )}
      {reports === 0 ? (
        <EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>
      ) : (
        <>
          <ChartFigure
            title={t('months.title')}
            spoken={t('months.spoken')}
            config={buildMonthsConfig(
              rows,
              { months: monthNames, soFar: t('months.soFar'), final: t('months.expected'), axis: t('perMillion') },
              format.significant,
            )}
            captions={{ unit: t('perMillion'), ...captions, interval: t('months.interval') }}
          />
          <PlainWords>{t('months.words')}</PlainWords>
          <MonthsTable rows={rows} />
          <TriangleTable rows={rows} />
          <PlainWords>{t('triangle.words')}</PlainWords>
          <LifeView life={data.life} captions={captions} />
          <ChartFigure
            title={t('forecast.title', { count: horizon })}
            spoken={t('forecast.spoken')}
            height={16}
            config={forecastConfig(forecast.months, {
              months: forecast.months.map(({ month }) => monthText(format, month)),
              expected: t('forecast.expected'),
              axis: t('forecast.axis'),
            })}
            captions={{ unit: t('forecast.axis'), ...captions, interval: t('interval95') }}
          />
          <PlainWords>
            {t('forecast.words')} {t('forecast.rate')} <EstimateText estimate={forecast.perMillion} />.
          </PlainWords>
        </>
      )}
    </>
  );
};
