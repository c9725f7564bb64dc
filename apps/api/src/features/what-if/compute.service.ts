import { periodDays } from '#analysis/calendar/period.ts';
import { notComputable } from '#analysis/estimate.ts';
import { bestSet } from '#analysis/what-if/best-set.ts';
import type { CauseCost, PreventionOption as Modelled } from '#analysis/what-if/options.ts';
import { simulateOptions } from '#analysis/what-if/simulate-options.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { countPareto } from '#api/features/analyses/pareto.service.ts';
import type { Outcome, PreventionOption, WhatIfInput, WhatIfResult } from '#contracts/what-if.ts';
import { type CauseSums, costsByCause, unsortedOf } from './cause-costs.ts';
import { requireInput } from './input.rules.ts';

const daysAYear = 365.25;
const draws = 4000;

const modelled = ({ key, onceMinor, yearlyMinor, effects, excludes }: PreventionOption): Modelled => ({
  key,
  onceCost: onceMinor,
  yearlyCost: yearlyMinor,
  effects,
  excludes,
});

/** Saving of one set of options from what each cause cost. The same inputs always give the same figures. */
function outcomeOf(
  costs: readonly CauseCost[],
  options: readonly PreventionOption[],
  { horizonYears, seed, years }: { horizonYears: number; seed: number; years: number },
): Outcome {
  const head = {
    keys: options.map(({ key }) => key),
    onceMinor: options.reduce((sum, option) => sum + option.onceMinor, 0),
    yearlyMinor: options.reduce((sum, option) => sum + option.yearlyMinor, 0),
  };
  const result = simulateOptions(costs, options.map(modelled), { years, horizonYears, seed, draws });
  if (result.reason !== null) {
    const none = notComputable(result.reason);
    return {
      ...head,
      savingPerYear: none,
      netPerYear: none,
      paybackYears: none,
      probabilityPays: null,
      reason: result.reason,
    };
  }
  const { savingPerYear, netPerYear, paybackYears, probabilityPays } = result;
  return { ...head, savingPerYear, netPerYear, paybackYears, probabilityPays, reason: null };
}

/** What the input gives on given costs: pure, so that a kept scenario can be computed again from what was kept. */
export function simulated(
  costs: readonly CauseCost[],
  years: number,
  input: WhatIfInput,
): Pick<WhatIfResult, 'alone' | 'together' | 'best'> {
  const { options, together, horizonYears, budgetMinor, seed } = input;
  const outcome = (chosen: readonly PreventionOption[]) => outcomeOf(costs, chosen, { horizonYears, seed, years });
  const among = (keys: readonly string[]) => options.filter(({ key }) => keys.includes(key));
  const best = bestSet(costs, options.map(modelled), {
    years,
    horizonYears,
    budget: budgetMinor ?? Number.MAX_SAFE_INTEGER,
  });
  return {
    alone: options.map((option) => outcome([option])),
    together: outcome(among(together)),
    best: best.keys.length === 0 ? null : { ...outcome(among(best.keys)), worthMinor: best.worth },
  };
}

export async function whatIfOf(asked: Asked, at: Date, input: WhatIfInput, path = ''): Promise<WhatIfResult> {
  requireInput(input, path);
  const { counted } = await countPareto(asked, {
    dimension: 'cause',
    measure: input.money,
    compare: 'none',
    top: 1,
    bars: 12,
  });
  const rows = counted.now as CauseSums[];
  const costs = costsByCause(rows, asked.money, input.money);
  const years = periodDays(asked.period) / daysAYear;
  const modelledCosts = costs.map(({ cause, sumMinor, sumOfSquares }) => ({ cause, sum: sumMinor, sumOfSquares }));
  return {
    ...asked.head,
    at: at.toISOString(),
    years,
    draws,
    reports: rows.reduce((sum, row) => sum + row.reports, 0),
    costs,
    unsorted: unsortedOf(rows, asked.money),
    ...simulated(modelledCosts, years, input),
  };
}
