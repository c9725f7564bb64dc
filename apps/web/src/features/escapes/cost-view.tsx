import { List, Title } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Costs } from '#contracts/analyses.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { useCaptions } from '#web/ui/filter/use-captions.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { MoneyNotes } from '#web/ui/money-notes.tsx';
import { MoneyText } from '#web/ui/money-text.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { CategoryTable } from './category-table.tsx';
import { factorConfig } from './factor-config.ts';
import { FactorTable } from './factor-table.tsx';

export const CostView = ({ costs, filter }: { costs: Costs; filter: FilterValues }) => {
  const { t } = useTranslation('escapes');
  const format = useFormat();
  const terms = useTerms();
  const captions = useCaptions(costs);
  const { currency, avoidable, byFound, baseStage } = costs;
  const all: FilterValues = { ...filter, ...costs.period };
  const money = (amountMinor: number, basis: 'booked' | 'estimated') => (
    <MoneyText money={{ amountMinor, currency }} basis={basis} short />
  );
  const factor = (value: number) => `× ${format.significant(value, 2)}`;
  const unsaid = avoidable.notComputable.filter(({ reports }) => reports > 0);
  const base = baseStage ? terms.stage[baseStage] : '';

  return (
    <>
      <Title order={2} mt="xl" mb="sm">
        {t('cost.title')}
      </Title>
      <Stats>
        <Stat
          label={t('cost.booked')}
          figure={money(costs.bookedMinor, 'booked')}
          link={<ReportsLink filter={{ ...all, cost: 'booked' }}>{t('cost.openBooked')}</ReportsLink>}
        />
        <Stat
          label={t('cost.estimated')}
          figure={money(costs.estimateMinor, 'estimated')}
          note={t('cost.apart')}
          link={<ReportsLink filter={{ ...all, cost: 'estimated' }}>{t('cost.openEstimated')}</ReportsLink>}
        />
        <Stat
          label={t('cost.avoidable')}
          figure={money(avoidable.minor, 'estimated')}
          note={t('cost.avoidableNote')}
          link={
            <ReportsLink filter={{ ...all, avoidable: true }}>
              {t('stat.open', { count: avoidable.reports })}
            </ReportsLink>
          }
        />
        <Stat
          label={t('cost.without')}
          figure={format.count(costs.withoutCost)}
          link={
            <ReportsLink filter={{ ...all, cost: 'none' }}>{t('stat.open', { count: costs.withoutCost })}</ReportsLink>
          }
        />
      </Stats>
      {unsaid.length > 0 && (
        <List size="sm" mb="lg">
          {unsaid.map(({ reason, reports }) => (
            <List.Item key={reason}>{t(`cost.notComputable.${reason}`, { count: reports })}</List.Item>
          ))}
        </List>
      )}
      <ChartFigure
        title={t('factor.title')}
        spoken={t('factor.spoken', { base })}
        config={factorConfig(
          byFound,
          {
            stages: byFound.map(({ stage }) => terms.stageShort[stage]),
            measured: t('factor.measured'),
            ruleOfTen: t('factor.ruleOfTen'),
            axis: t('factor.axis', { base }),
          },
          factor,
        )}
        captions={{ unit: t('factor.axis', { base }), ...captions, interval: t('factor.interval') }}
      />
      <FactorTable costs={costs} filter={all} write={factor} />
      <CategoryTable costs={costs} />
      <MoneyNotes head={costs} />
    </>
  );
};
