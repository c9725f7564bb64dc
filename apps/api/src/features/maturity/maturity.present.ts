import { notComputable } from '#analysis/estimate.ts';
import { addMonths, type Month, type Triangle } from '#analysis/maturity/triangle.ts';
import { warrantyForecast } from '#analysis/maturity/warranty-forecast.ts';
import { failureRate } from '#analysis/rates/failure-rate.ts';
import { queryOf } from '#api/features/week/links.ts';
import type { Maturity } from '#contracts/maturity.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import type { Starts } from './cohorts.ts';
import { type Pattern, patternOf, reportedAt } from './pattern.ts';
import { firstDayOf } from './window.rules.ts';

/** From this share on, a build month may be compared with older ones as it is. */
const matureFrom = 0.8;

/** The plants seen from their start in a month: all of them, unless some began later. */
function plantsOf(starts: Starts, month: Month, asked: Filter['plant']): Filter['plant'] {
  const seen = [...starts].filter(([, start]) => month >= start).map(([plantId]) => plantId);
  return seen.length === starts.size ? asked : seen;
}

function presentRows(
  { rows }: Triangle,
  { ladder, byAge }: Pattern,
  { starts, base }: { starts: Starts; base: Filter },
): Maturity['rows'] {
  return rows.map(({ month, produced, age, cumulative }, place) => {
    const reported = byAge && reportedAt(byAge, age);
    const { final, standardError } = ladder.rows[place]!;
    return {
      month,
      produced,
      age,
      cumulative,
      final: byAge ? final : notComputable('too_few'),
      standardError: byAge && standardError,
      maturity: reported,
      mature: reported !== null && reported >= matureFrom,
      finalPerMillion: reported
        ? failureRate({ failures: cumulative.at(-1)!, exposure: produced === null ? null : produced * reported })
        : notComputable('too_few'),
      filter: queryOf({
        ...base,
        plant: plantsOf(starts, month, base.plant),
        built: true,
        builtFrom: firstDayOf(month),
        builtTo: firstDayOf(addMonths(month, 1)),
      }),
    };
  });
}

export function presentTriangle(
  seen: Triangle,
  options: { starts: Starts; base: Filter; last: Month; horizon: number },
): Pick<Maturity, 'reports' | 'rows' | 'reportedByAge' | 'toCome' | 'forecast'> {
  const pattern = patternOf(seen);
  const { byAge, ladder, reports } = pattern;
  const { last, horizon } = options;
  const forecast = warrantyForecast(seen.rows, byAge ?? seen.rows.map(() => null), { last, horizonMonths: horizon });
  return {
    reports,
    rows: presentRows(seen, pattern, options),
    reportedByAge: byAge ?? [],
    toCome: byAge ? ladder.toCome : { value: 0, standardError: null },
    forecast: {
      perMillion: perMillion(forecast.ratePerUnit),
      months: forecast.months,
      total: forecast.total,
    },
  };
}

function perMillion(rate: ReturnType<typeof warrantyForecast>['ratePerUnit']): Maturity['forecast']['perMillion'] {
  if (rate.reason !== null) return rate;
  const { low, high, confidence } = rate.interval;
  const million = 1_000_000;
  return {
    value: rate.value * million,
    interval: { low: low * million, high: high === null ? null : high * million, confidence },
    reason: null,
  };
}
