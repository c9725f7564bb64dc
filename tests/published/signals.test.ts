import { describe, expect, it } from 'vitest';
import { changePoint } from '#analysis/signals/change-point.ts';
import { expectRelative, reference } from './reference.ts';

describe('change point', () => {
  type Expected = {
    k_hat: number;
    rate_before: number;
    rate_after: number;
    LR_statistic: number;
    'posterior_flat_k_Gamma(1,1)': { mode: number; 'P(k=36..46)': number[] };
  };
  const coal = reference<{ yearly_1851_1962: number[] }, Expected>('8-coal');
  it(coal.title, () => {
    const series = coal.input.yearly_1851_1962.map((failures) => ({ failures, exposure: 1 }));
    const change = changePoint(series, { seed: 1, prior: { shape: 1, rate: 1 } });
    if (change.reason !== null) throw new Error(change.reason);
    const posterior = coal.expected['posterior_flat_k_Gamma(1,1)'];
    expect(change.at).toBe(coal.expected.k_hat);
    posterior['P(k=36..46)'].forEach((probability, place) => {
      expectRelative(change.posterior[36 + place - 1]!, probability);
    });
    expectRelative(change.statistic, coal.expected.LR_statistic);
    expectRelative(change.rateBefore.value, coal.expected.rate_before);
    expectRelative(change.rateAfter.value, coal.expected.rate_after);
    expect(change.p).toBeLessThanOrEqual(0.001);
    expect([change.interval.low, change.interval.high]).toEqual([36, 46]);
  });
});
