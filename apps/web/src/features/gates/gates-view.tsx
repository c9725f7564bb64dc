import { useTranslation } from 'react-i18next';
import type { Gates } from '#contracts/gates.ts';
import type { Stage } from '#contracts/taxonomy.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useCaptions } from '#web/ui/filter/use-captions.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { MoneyNotes } from '#web/ui/money-notes.tsx';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { PlainWords } from '#web/ui/plain-words.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { effectivenessConfig, moneyConfig } from './chart-configs.ts';
import { EffectivenessTable } from './effectiveness-table.tsx';
import { FoundCostsTable } from './found-costs-table.tsx';
import { NextGate } from './next-gate.tsx';
import { WorthTable } from './worth-table.tsx';

interface Props {
  data: Gates;
  filter: FilterValues;
  onCost: (gate: Stage, minor: number | undefined) => void;
}

export const GatesView = ({ data, filter, onCost }: Props) => {
  const { t } = useTranslation('gates');
  const format = useFormat();
  const terms = useTerms();
  const captions = useCaptions(data);
  const { gates, made, maturity, currency, period } = data;
  const booked = data.money === 'booked';
  const write = (minor: number) =>
    `${booked ? '' : '~ '}${format.moneyShort({ amountMinor: Math.round(minor), currency })}`;
  const share = (value: number) => format.percent(value, 0);
  const names = (stages: readonly Stage[]) => stages.map((stage) => terms.stageShort[stage]);
  const all: FilterValues = { ...filter, ...period };
  const basis = t(booked ? 'money.bookedWords' : 'money.estimatedWords');
  const madeColumns: Column<Gates['made'][number]>[] = [
    { id: 'stage', header: t('made.stage'), rowHeader: true, phone: 'title', cell: ({ stage }) => terms.stage[stage] },
    {
      id: 'cost',
      header: t('made.cost'),
      align: 'end',
      cell: ({ costOfOneFault }) => <EstimateText estimate={costOfOneFault} write={write} writeLimit={write} brief />,
    },
    {
      id: 'field',
      header: t('made.field'),
      align: 'end',
      cell: ({ reachesField }) => <EstimateText estimate={reachesField} write={share} writeLimit={share} brief />,
    },
  ];

  return (
    <>
      <NextGate data={data} />
      <Stats>
        <Stat label={t('stat.reports')} figure={format.count(data.reports)} note={t('stat.reportsNote')} />
        <Stat
          label={t('stat.withoutOrigin')}
          figure={format.count(data.withoutOrigin)}
          link={<ReportsLink filter={{ ...all, origin: ['none'] }}>{t('stat.open')}</ReportsLink>}
        />
        <Stat
          label={t('stat.maturity')}
          figure={
            maturity.reported === null ? (
              <NotComputable reason={maturity.reason ?? 'too_few'} brief />
            ) : (
              <em>~ {share(maturity.reported)}</em>
            )
          }
          note={t('stat.pattern', { count: maturity.pattern, day: format.day(maturity.until) })}
        />
        <Stat
          label={t('stat.undated')}
          figure={format.count(maturity.withoutBuildDate)}
          note={t('stat.dated', { count: maturity.withBuildDate })}
          link={
            <ReportsLink filter={{ ...filter, from: period.from, to: maturity.until, found: ['field'], built: false }}>
              {t('stat.open')}
            </ReportsLink>
          }
        />
      </Stats>
      <ChartFigure
        title={t('table.title')}
        spoken={t('table.spoken')}
        config={effectivenessConfig(
          gates,
          {
            stages: names(gates.map(({ stage }) => stage)),
            raw: t('table.raw'),
            matured: t('table.matured'),
            axis: t('table.axis'),
          },
          share,
        )}
        captions={{ unit: t('table.axis'), ...captions, interval: t('table.interval') }}
      />
      <PlainWords>{t('table.words')}</PlainWords>
      <EffectivenessTable data={data} filter={filter} />
      <ChartFigure
        title={t('worth.title')}
        spoken={t('worth.spoken')}
        height={18}
        config={moneyConfig(
          gates.map(({ onePoint }) => onePoint),
          { stages: names(gates.map(({ stage }) => stage)), label: t('worth.onePoint') },
          { booked, write },
        )}
        captions={{ unit: `${t('worth.axis')}, ${basis}`, ...captions, interval: t('worth.interval') }}
      />
      <PlainWords>{t('worth.words')}</PlainWords>
      <WorthTable data={data} write={write} onCost={onCost} />
      <ChartFigure
        title={t('made.title')}
        spoken={t('made.spoken')}
        height={18}
        config={moneyConfig(
          made.map(({ costOfOneFault }) => costOfOneFault),
          { stages: names(made.map(({ stage }) => stage)), label: t('made.cost') },
          { booked, write },
        )}
        captions={{ unit: `${t('made.axis')}, ${basis}`, ...captions, interval: t('worth.interval') }}
        table={
          <DataTable caption={t('made.caption')} columns={madeColumns} rows={made} rowKey={({ stage }) => stage} />
        }
      />
      <PlainWords>{t('made.words')}</PlainWords>
      <FoundCostsTable found={data.found} currency={currency} />
      <MoneyNotes head={data} />
    </>
  );
};
