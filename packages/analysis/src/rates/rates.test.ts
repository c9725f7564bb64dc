import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialInterval } from './binomial-interval.ts';
import { dpmo } from './dpmo.ts';
import { failureRate } from './failure-rate.ts';
import { poissonInterval } from './poisson-interval.ts';
import { poissonTest } from './poisson-test.ts';
import { rateRatio } from './rate-ratio.ts';
import { sigmaLevel } from './sigma-level.ts';
import { firstPassYield, rolledThroughputYield } from './yields.ts';

describe('failureRate', () => {
  it('is parts per million unless another scale is asked for', () => {
    expect(failureRate({ failures: 3, exposure: 120_000 }).value).toBeCloseTo(25, 12);
    expect(failureRate({ failures: 3, exposure: 120_000, per: 1000 }).value).toBeCloseTo(0.025, 12);
  });

  it('says that there was no production instead of dividing by a guess', () => {
    for (const exposure of [0, null]) {
      expect(failureRate({ failures: 3, exposure })).toEqual({ value: null, interval: null, reason: 'no_production' });
    }
  });

  it('holds more failures than production, because a terminal may fail twice', () => {
    expect(failureRate({ failures: 3, exposure: 2, per: 1 }).value).toBe(1.5);
  });

  it('refuses a count that is none', () => {
    for (const failures of [-1, 0.5, Number.NaN]) {
      expect(() => failureRate({ failures, exposure: 10 }), `${failures}`).toThrow(RangeError);
    }
    expect(() => failureRate({ failures: 1, exposure: -10 })).toThrow(RangeError);
  });
});

describe('exact intervals', () => {
  it('contain the estimate and widen with the confidence', () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.nat(100_000), (events, others) => {
        const trials = events + others;
        const [narrow, wide] = [binomialInterval(events, trials, 0.8), binomialInterval(events, trials, 0.99)];
        const share = trials === 0 ? 0.5 : events / trials;
        expect(wide.low).toBeLessThanOrEqual(narrow.low);
        expect(narrow.low).toBeLessThanOrEqual(share);
        expect(share).toBeLessThanOrEqual(narrow.high);
        expect(narrow.high).toBeLessThanOrEqual(wide.high);
        const { low, high } = poissonInterval(events);
        expect(low).toBeLessThanOrEqual(events);
        expect(events).toBeLessThan(high);
      }),
    );
  });
});

describe('dpmo', () => {
  it('says so when opportunities are missing or fewer than defects', () => {
    expect(dpmo({ defects: 2, opportunities: null }).reason).toBe('no_production');
    expect(dpmo({ defects: 3, opportunities: 2 }).reason).toBe('exceeds_production');
    expect(dpmo({ defects: 34, opportunities: 10_000_000 }).value).toBeCloseTo(3.4, 12);
  });

  it('has no sigma level without defects', () => {
    expect(sigmaLevel(0)).toEqual({ value: null, table: 'one_tail_shift_1_5', reason: 'not_finite' });
  });
});

describe('rateRatio', () => {
  it('turned round is the reciprocal, with the tails exchanged', () => {
    const [a, b] = [
      { failures: 14, exposure: 3000 },
      { failures: 31, exposure: 4500 },
    ];
    const [forth, back] = [rateRatio(a, b), rateRatio(b, a)];
    expect(forth.value! * back.value!).toBeCloseTo(1, 12);
    expect(forth.interval!.low * back.interval!.high!).toBeCloseTo(1, 9);
    expect(forth.p!.less).toBeCloseTo(back.p!.greater, 12);
    expect(forth.p!.twoSided).toBeCloseTo(back.p!.twoSided, 12);
  });

  it('says why it cannot be computed', () => {
    expect(rateRatio({ failures: 1, exposure: 0 }, { failures: 1, exposure: 5 }).reason).toBe('no_production');
    expect(rateRatio({ failures: 0, exposure: 5 }, { failures: 0, exposure: 5 }).reason).toBe('no_reports');
    const unbounded = rateRatio({ failures: 4, exposure: 5 }, { failures: 0, exposure: 5 });
    expect(unbounded).toMatchObject({ value: null, reason: 'not_finite', interval: { high: null } });
  });
});

describe('poissonTest', () => {
  it('finds nothing odd in the most likely count, and tests zero', () => {
    expect(poissonTest({ count: 4, exposure: 2, rate: 2.1 }).p!.twoSided).toBe(1);
    // P(0 | 3) = exp(-3); outcomes as unlikely on the other side are those from 7 on: 0.0335 (Poisson table)
    const { p } = poissonTest({ count: 0, exposure: 1, rate: 3 });
    expect(p!.less).toBeCloseTo(Math.exp(-3), 12);
    expect(p!.twoSided).toBeCloseTo(Math.exp(-3) + 0.033509, 5);
    expect(poissonTest({ count: 3, exposure: null, rate: 1 })).toMatchObject({
      p: null,
      rate: { reason: 'no_production' },
    });
  });
});

describe('yields', () => {
  it('multiply along the steps', () => {
    const steps = [
      { units: 1000, notRightFirstTime: 50 },
      { units: 950, notRightFirstTime: 19 },
      { units: 931, notRightFirstTime: 0 },
    ];
    expect(firstPassYield(steps[0]!).value).toBe(0.95);
    expect(rolledThroughputYield(steps, { seed: 1 }).value).toBeCloseTo(0.95 * 0.98, 12);
  });

  it('contain the estimate, also without a failure', () => {
    const { value, interval } = rolledThroughputYield([{ units: 20, notRightFirstTime: 0 }], { seed: 1 });
    expect(value).toBe(1);
    expect(interval!.high).toBe(1);
    expect(interval!.low).toBeLessThan(0.95);
  });

  it('say why they cannot be computed', () => {
    expect(firstPassYield({ units: null, notRightFirstTime: 0 }).reason).toBe('no_production');
    expect(firstPassYield({ units: 3, notRightFirstTime: 4 }).reason).toBe('exceeds_production');
    const steps = [
      { units: 5, notRightFirstTime: 1 },
      { units: 0, notRightFirstTime: 0 },
    ];
    expect(rolledThroughputYield(steps, { seed: 1 }).reason).toBe('no_production');
    expect(rolledThroughputYield([], { seed: 1 }).reason).toBe('no_production');
  });
});
