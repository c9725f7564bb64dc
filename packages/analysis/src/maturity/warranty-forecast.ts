import { defaultConfidence, type Estimate, notComputable } from '../estimate.ts';
import { requireConfidence } from '../numeric/require-count.ts';
import { failureRate } from '../rates/failure-rate.ts';
import { predictCount } from './predict-count.ts';
import { addMonths, type Month, type TriangleRow } from './triangle.ts';

export type WarrantyForecast = {
  /** failures per unit built, over the whole time seen */
  ratePerUnit: Estimate;
  /** failures to be reported in each coming month */
  months: { month: Month; failures: Estimate }[];
  /** over all these months together */
  total: Estimate;
};

/**
 * Failures to come from what is already built, month by month.
 *
 * rate = Σ failures / Σ built × maturity(age); expected in a month = rate × Σ built × (maturity(age then) - maturity(age before)).
 * Unlike the chain ladder it also forecasts build months without a report so far. Intervals predict counts: negative binomial,
 * the rate having the posterior Gamma(failures + 1/2, Σ built × maturity); maturity is taken as known, so they are somewhat short.
 * Sources: Stanard J.N. (1985) Proc. Casualty Actuarial Society 72:124-148, Cape Cod (from memory).
 *
 * @param rows as `triangle` returns them; rows without production are left out
 * @param maturity fraction reported by each age, as `maturityByAge` returns it; beyond its end everything is reported
 * @returns `no_production` when nothing with a maturity was built, `too_few` where a maturity is not known
 */
export function warrantyForecast(
  rows: readonly TriangleRow[],
  maturity: readonly (number | null)[],
  options: { last: Month; horizonMonths: number; confidence?: number },
): WarrantyForecast {
  const { last, horizonMonths, confidence = defaultConfidence } = options;
  requireConfidence(confidence);
  const built = rows.filter(({ produced }) => produced !== null && produced > 0);
  const at = (age: number): number => (age < maturity.length ? maturity[age]! : 1);
  const unknown = built.some(({ age }) => age < maturity.length && maturity[age] === null);
  const exposure = unknown ? 0 : built.reduce((sum, { produced, age }) => sum + produced! * at(age), 0);
  const months = Array.from({ length: horizonMonths }, (_, ahead) => addMonths(last, ahead + 1));
  if (exposure === 0) {
    const none = notComputable(unknown ? 'too_few' : 'no_production');
    return { ratePerUnit: none, months: months.map((month) => ({ month, failures: none })), total: none };
  }
  const failures = built.reduce((sum, { cumulative }) => sum + cumulative.at(-1)!, 0);
  const toMature = (from: number, to: number): number =>
    built.reduce((sum, { produced, age }) => sum + produced! * (at(age + to) - at(age + from)), 0);
  const predict = (coming: number): Estimate => predictCount({ failures, exposure }, coming, confidence);
  return {
    ratePerUnit: failureRate({ failures, exposure, per: 1, confidence }),
    months: months.map((month, ahead) => ({ month, failures: predict(toMature(ahead, ahead + 1)) })),
    total: predict(toMature(0, horizonMonths)),
  };
}
