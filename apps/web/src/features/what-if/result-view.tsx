import { useTranslation } from 'react-i18next';
import type { WhatIfInput, WhatIfResult } from '#contracts/what-if.ts';
import { ChartFigure } from '#web/ui/chart/chart-figure.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { MoneyNotes } from '#web/ui/money-notes.tsx';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { PlainWords } from '#web/ui/plain-words.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { CostsTable } from './costs-table.tsx';
import { OutcomeTable } from './outcome-table.tsx';
import { namesOf, outcomeRows } from './outcomes.ts';
import { savingConfig } from './saving-config.ts';

interface Props {
  input: WhatIfInput;
  result: WhatIfResult;
  filter: FilterValues;
}

export const ResultView = ({ input, result, filter }: Props) => {
  const { t } = useTranslation('what-if');
  const format = useFormat();
  const { together, best, currency, unsorted, period } = result;
  const short = (minor: number) => format.moneyShort({ amountMinor: Math.round(minor), currency });
  const names = (keys: readonly string[]) => namesOf(keys, input).join(' + ');
  const rows = outcomeRows(result);
  const years = (value: number) => format.significant(value, 2);
  const captions = {
    unit: t('outcome.axis', { currency }),
    period: format.period(period.from, period.to),
    filter: format.list(result.plants.map(({ code }) => code)),
    interval: t('outcome.interval', { draws: format.count(result.draws), seed: input.seed }),
  };
  return (
    <>
      <Stats>
        <Stat
          label={t('stat.net', { set: names(together.keys) })}
          figure={
            together.netPerYear.value === null ? (
              <NotComputable reason={together.netPerYear.reason} brief />
            ) : (
              <em>~ {short(together.netPerYear.value)}</em>
            )
          }
          interval={
            together.netPerYear.value !== null && (
              <EstimateText estimate={together.netPerYear} write={() => ''} writeLimit={short} />
            )
          }
        />
        <Stat
          label={t('stat.payback')}
          figure={
            together.paybackYears.value === null
              ? t('outcome.never')
              : t('stat.years', { count: together.paybackYears.value, years: years(together.paybackYears.value) })
          }
          interval={
            together.paybackYears.value !== null && (
              <EstimateText estimate={together.paybackYears} write={() => ''} writeLimit={years} />
            )
          }
        />
        <Stat
          label={t('outcome.pays', { years: format.number(input.horizonYears) })}
          figure={together.probabilityPays === null ? '–' : format.drawn(together.probabilityPays)}
        />
        <Stat
          label={t('stat.best', { limit: input.budgetMinor === null ? t('stat.noBudget') : short(input.budgetMinor) })}
          figure={best ? <span style={{ fontSize: '1.125rem' }}>{names(best.keys)}</span> : t('stat.none')}
          note={best && t('stat.worth', { worth: short(best.worthMinor), years: format.number(input.horizonYears) })}
        />
      </Stats>
      <ChartFigure
        title={t('outcome.title')}
        spoken={t('outcome.spoken')}
        height={5 + 2.5 * rows.length}
        config={savingConfig(
          rows,
          {
            names: rows.map(({ keys, role }) => (role === 'alone' ? names(keys) : t(`outcome.short.${role}`))),
            axis: t('outcome.axis', { currency }),
          },
          (minor) => `~ ${short(minor)}`,
        )}
        captions={captions}
      />
      <PlainWords>{t('outcome.words')}</PlainWords>
      <OutcomeTable input={input} result={result} />
      <CostsTable input={input} result={result} filter={filter} />
      {unsorted.reports > 0 && (
        <PlainWords>
          {t('costs.unsorted', { count: unsorted.reports })}{' '}
          <ReportsLink filter={{ ...filter, ...period, cause: ['none', 'undetermined'] }}>
            {t('costs.open')}
          </ReportsLink>
        </PlainWords>
      )}
      <MoneyNotes head={result} />
    </>
  );
};
