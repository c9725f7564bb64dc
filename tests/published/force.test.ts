import { describe, expect, it } from 'vitest';
import { andersonDarling } from '#analysis/force/anderson-darling.ts';
import { againstMinimum, betweenLimits } from '#analysis/force/capability.ts';
import { judgeForces } from '#analysis/force/judge-forces.ts';
import { moments } from '#analysis/force/moments.ts';
import { orderStatisticBound } from '#analysis/force/order-statistic-bound.ts';
import { runChart } from '#analysis/force/run-chart.ts';
import { toleranceFactor } from '#analysis/force/tolerance-bound.ts';
import { fromNewtons, toNewtons } from '#analysis/force/units.ts';
import { noncentralTQuantile } from '#analysis/numeric/noncentral-t.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

type Sample = { force_N: number[]; min_N: number };

describe('one-sided normal tolerance factors', () => {
  const table = reference<{ n: number[]; confidence: number }, Record<string, number[]>>('7-k1-table');
  it.each(Object.entries(table.expected))(`${table.title}: %s`, (name, factors) => {
    const coverage = Number(name.slice(2));
    table.input.n.forEach((n, place) => {
      expectRelative(toleranceFactor(n, { coverage, confidence: table.input.confidence }), factors[place]!);
    });
  });

  const nist = reference<{ n: number; p: number; confidence: number }, { k1_exact: number }>('7-nist-tolerance');
  it(nist.title, () => {
    const { n, p, confidence } = nist.input;
    expectRelative(toleranceFactor(n, { coverage: p, confidence }), nist.expected.k1_exact);
  });

  type Quantile = { p: number; freedom: number; shift: number };
  const far = reference<Quantile, number>('added-noncentral-t');
  it.each(far.cases)(`${far.title}: $input`, ({ input, expected }) => {
    expectRelative(noncentralTQuantile(input.p, input.freedom, input.shift), expected, 1e-7);
  });
});

describe('pull-out sample', () => {
  type Expected = {
    mean: number;
    sd: number;
    lower_tolerance_95_95: number;
    Cpl: number;
    Cpl_lower95_exact: number;
    AD_A2: number;
    AD_A2_star: number;
    'AD_p (statsmodels normal_ad)': number;
  };
  const { title, input, expected } = reference<Sample, Expected>('7-pullout-sample');
  const judged = judgeForces(input.force_N, input.min_N, { confidence: 0.9 });
  if ('reason' in judged) throw new Error(judged.reason);

  it(`${title}: bound and capability`, () => {
    expectRelative(judged.mean, expected.mean);
    expectRelative(judged.deviation, expected.sd);
    expect(judged.method).toBe('normal');
    expectRelative(judged.bound, expected.lower_tolerance_95_95);
    expectRelative(judged.capability.value, expected.Cpl);
    expectRelative(judged.capability.interval!.low, expected.Cpl_lower95_exact);
    expect(judged.meetsMinimum).toBe(true);
  });

  it(`${title}: normality`, () => {
    expectRelative(judged.normality!.statistic, expected.AD_A2);
    expectRelative(judged.normality!.adjusted, expected.AD_A2_star);
    expectRelative(judged.normality!.p, expected['AD_p (statsmodels normal_ad)'], 1e-5);
  });

  const exact = reference<{ n: number; margin: number }, Record<string, number>>('added-fraction-below');
  it.each(exact.cases)(`${exact.title}: $input`, ({ input: one, expected: limits }) => {
    const margins = againstMinimum({ n: one.n, mean: one.margin, deviation: 1 }, 0);
    if ('reason' in margins) throw new Error(margins.reason);
    expectRelative(margins.capability.interval!.low, limits.capabilityLow!);
    expectRelative(margins.capability.interval!.high, limits.capabilityHigh!);
    expectRelative(margins.below.interval!.low, limits.belowLow!, 1e-5);
    expectRelative(margins.below.interval!.high, limits.belowHigh!, 1e-5);
  });
});

describe('normality, capability between limits, other checks', () => {
  const normality = reference<number[], number>('added-anderson-darling');
  it.each(normality.cases)(`${normality.title}: $input`, ({ input, expected }) => {
    expectRelative(andersonDarling(input)!.statistic, expected, 1e-8);
  });

  type Limits = { USL: number; LSL: number; mean: number; s: number };
  const nist = reference<Limits, { Cp: number; Cpk: number }>('7-nist-capability');
  it(nist.title, () => {
    const { USL, LSL, mean, s } = nist.input;
    const result = betweenLimits({ n: 30, mean, deviation: s }, { lower: LSL, upper: USL });
    if ('reason' in result) throw new Error(result.reason);
    expectRelative(result.cp.value, nist.expected.Cp);
    expectRelative(result.cpk.value, nist.expected.Cpk);
    expect(result.cp.interval!.low).toBeLessThan(1);
  });

  const run = reference<{ C: number[]; R: number[] }, Record<string, number>>('3-success-run');
  it(`${run.title}: from so many values on, the smallest is a bound without assumptions`, () => {
    for (const confidence of run.input.C) {
      for (const coverage of [0.9, 0.95, 0.99]) {
        const n = run.expected[`C=${confidence} R=${coverage}`]!;
        const values = Array.from({ length: n }, (_, i) => 1000 - i);
        expect(orderStatisticBound(values, { coverage, confidence })).toMatchObject({ value: 1001 - n, rank: 1 });
        expect(orderStatisticBound(values.slice(1), { coverage, confidence })).toMatchObject({ needed: n });
      }
    }
  });

  const ranks = reference<{ n: number; coverage: number; confidence: number }, number>('added-order-statistic-rank');
  it.each(ranks.cases)(`${ranks.title}: $input`, ({ input, expected }) => {
    const values = Array.from({ length: input.n }, (_, i) => i + 1);
    expect(orderStatisticBound(values, input)).toMatchObject({ rank: expected, value: expected });
  });

  const runs = reference<string, { runs: number; fewer: number; more: number }>('added-runs-distribution');
  it.each(runs.cases)(`${runs.title}: $input`, ({ input, expected }) => {
    const chart = runChart([...input].map((side) => (side === '+' ? 2 : 1)));
    const shifted = runChart([...input].map((side, i) => (side === '+' ? 60 + i / 100 : 40 - i / 100)))!;
    expect(shifted.runs).toBe(expected.runs);
    expectRelative(shifted.pFewer, expected.fewer, 1e-9);
    expectRelative(shifted.pMore, expected.more, 1e-9);
    expect(chart === null || chart.runs <= expected.runs).toBe(true);
  });

  it('NIST Special Publication 811 (value from memory): 1 lbf = 4.4482216152605 N, exact', () => {
    expect(toNewtons(10, 'lbf')).toBeCloseTo(44.482216152605, 12);
    expect(fromNewtons(toNewtons(13, 'lbf'), 'lbf')).toBeCloseTo(13, 12);
    expect(toNewtons(45, 'N')).toBe(45);
    expectAbsolute(moments([1, 2, 3, 4]).deviation, 1.2909944487358056, 1e-12);
  });
});
