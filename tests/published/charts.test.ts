import { describe, expect, it, vi } from 'vitest';
import { attributeChart } from '#analysis/charts/attribute-chart.ts';
import { cusum } from '#analysis/charts/cusum.ts';
import { cusumRunLength, designCusum } from '#analysis/charts/cusum-design.ts';
import { gChart, tChart } from '#analysis/charts/gap-charts.ts';
import { individualsChart } from '#analysis/charts/individuals-chart.ts';
import { type RunRule, runSignals } from '#analysis/charts/run-rules.ts';
import { seededRandom } from '#analysis/numeric/random.ts';
import { normalVariate } from '#analysis/numeric/variates.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

/** Simulations take as long as the machine needs. */
vi.setConfig({ testTimeout: 120_000 });

const samples = (counts: number[], sizes: number[] | number) =>
  counts.map((count, place) => ({
    key: `${place + 1}`,
    count,
    size: typeof sizes === 'number' ? sizes : sizes[place]!,
  }));

const gaps = (values: number[]) => values.map((gap, place) => ({ key: `${place + 1}`, gap }));

/** Places from 1, as printed. */
const outside = (points: readonly { z: number; phase: number }[]) =>
  runSignals(points, ['sudden_jump']).map(({ at }) => at + 1);

describe('counted faults', () => {
  const wafer = reference<{ defects: number[] }, { cbar: number; UCL: number; LCL: number; outside_strict: number[] }>(
    '4-nist-c-wafer',
  );
  it(`${wafer.title}: the wafer on the limit is not beyond it`, () => {
    const { points } = attributeChart('c', samples(wafer.input.defects, 1));
    expect(points![0]).toMatchObject({
      centre: wafer.expected.cbar,
      high: wafer.expected.UCL,
      low: wafer.expected.LCL,
    });
    expect(outside(points!)).toEqual(wafer.expected.outside_strict);
  });

  type P = { defectives: number[]; n: number };
  const fraction = reference<P, { pbar: number; UCL: number; LCL: number; outside: number[] }>('4-nist-p-wafer');
  it(fraction.title, () => {
    const { points } = attributeChart('p', samples(fraction.input.defectives, fraction.input.n));
    expectRelative(points![0]!.centre, fraction.expected.pbar);
    expectRelative(points![0]!.high, fraction.expected.UCL);
    expectRelative(points![0]!.low, fraction.expected.LCL);
    expect(outside(points!)).toEqual(fraction.expected.outside);
  });

  const laney = reference<P, { sigma_z: number; UCL: number }>('4-laney-p');
  it(`${laney.title}: the lower limit below 0 is none`, () => {
    const chart = attributeChart('p', samples(laney.input.defectives, laney.input.n), { corrected: true });
    expectRelative(chart.phases![0]!.dispersion, laney.expected.sigma_z);
    expectRelative(chart.points![0]!.high, laney.expected.UCL);
    expect(chart.points![0]!.low).toBeNull();
  });

  type U = { c: number[]; n: number[] };
  const varying = reference<U, { ubar: number; UCL: number[]; z: number[]; sigma_z: number }>('4-u-varying');
  it(varying.title, () => {
    const chart = attributeChart('u', samples(varying.input.c, varying.input.n));
    chart.points!.forEach((point, place) => {
      expectRelative(point.centre, varying.expected.ubar);
      expectRelative(point.high, varying.expected.UCL[place]!);
      expectRelative(point.z, varying.expected.z[place]!);
    });
    const corrected = attributeChart('u', samples(varying.input.c, varying.input.n), { corrected: true });
    expectRelative(corrected.phases![0]!.dispersion, varying.expected.sigma_z);
  });

  type Wire = { c: number[]; n_metres: number[] };
  const wire = reference<Wire, { ubar: number; UCL_by_n: Record<string, number>; max_z: number }>('4-u-wire-cracks');
  it(`${wire.title}: the correction never narrows`, () => {
    const { points, phases } = attributeChart('u', samples(wire.input.c, wire.input.n_metres), { corrected: true });
    points!.forEach(({ high, low }, place) => {
      expectRelative(high, wire.expected.UCL_by_n[wire.input.n_metres[place]!]!);
      expect(low).toBeNull();
    });
    expectRelative(Math.max(...points!.map(({ z }) => z)), wire.expected.max_z);
    expect(phases![0]!.dispersion).toBe(1);
  });
});

describe('measured values and gaps', () => {
  const flow = reference<{ x: number[] }, { mean: number; UCL: number; LCL: number }>('4-nist-individuals');
  it(flow.title, () => {
    const { points } = individualsChart(flow.input.x.map((value, place) => ({ key: `${place}`, value })));
    expectRelative(points![0]!.centre, flow.expected.mean);
    expectRelative(points![0]!.high, flow.expected.UCL);
    expectRelative(points![0]!.low, flow.expected.LCL);
  });

  const g = reference<{ g: number[] }, { gbar: number; UCL: number }>('4-g-chart');
  it(g.title, () => {
    const { points } = gChart(gaps(g.input.g), { limitsBy: 'three_sigma' });
    expectRelative(points![0]!.centre, g.expected.gbar);
    expectRelative(points![0]!.high, g.expected.UCL);
    expect(points![0]!.low).toBeNull();
  });

  const t = reference<{ t_days: number[] }, { UCL_t: number; CL_t: number }>('4-t-chart');
  it(t.title, () => {
    const { points } = tChart(gaps(t.input.t_days));
    expectRelative(points![0]!.centre, t.expected.CL_t);
    expectRelative(points![0]!.high, t.expected.UCL_t);
    expect(points![0]!.low).toBeNull();
  });
});

describe('run rules', () => {
  const nelson = reference<{ z: number[] }, Record<string, number[]>>('4-nelson-signals');
  const names: RunRule[] = [
    'sudden_jump',
    'level_shift',
    'drift',
    'alternation',
    'moderate_shift',
    'small_shift',
    'too_even',
    'two_groups',
  ];
  it.each(names)(`${nelson.title}: %s`, (rule) => {
    const points = nelson.input.z.map((z) => ({ z, phase: 0 }));
    expect(runSignals(points, [rule], 9).map(({ at }) => at + 1)).toEqual(nelson.expected[names.indexOf(rule) + 1]);
  });

  const rulesOf: Record<string, RunRule> = {
    1: 'sudden_jump',
    2: 'moderate_shift',
    3: 'small_shift',
    4: 'level_shift',
  };
  type RunLengths = { ARL0: Record<string, number>; ARL_shift1: Record<string, number> };
  const lengths = reference<unknown, RunLengths>('4-we-rules-arl');

  /** Mean number of points until the first signal, and its standard error. */
  function simulate(rules: RunRule[], shift: number, expected: number, rounds: number, seed: number) {
    const random = seededRandom(seed);
    const runs = Array.from({ length: rounds }, () => {
      let run = 0;
      for (let history: { z: number; phase: number }[] = []; ; history = history.slice(-7)) {
        const known = history.length;
        const fresh = Array.from({ length: Math.ceil(expected) }, () => ({
          z: normalVariate(random) + shift,
          phase: 0,
        }));
        history = [...history, ...fresh];
        const first = runSignals(history, rules).find(({ at }) => at >= known);
        if (first) return run + first.at - known + 1;
        run += fresh.length;
      }
    });
    const mean = runs.reduce((sum, run) => sum + run, 0) / rounds;
    const variance = runs.reduce((sum, run) => sum + (run - mean) ** 2, 0) / (rounds - 1);
    return { mean, error: Math.sqrt(variance / rounds) };
  }

  it.each(Object.entries(lengths.expected.ARL0))(
    `${lengths.title}: false alarms of rules %s`,
    (combination, expected) => {
      const rules = [...combination].map((number) => rulesOf[number]!);
      const { mean, error } = simulate(rules, 0, expected, 600, 11);
      expect(Math.abs(mean - expected)).toBeLessThan(3.5 * error);
    },
  );

  it.each(Object.entries(lengths.expected.ARL_shift1))(
    `${lengths.title}: delay of rules %s`,
    (combination, expected) => {
      const rules = [...combination].map((number) => rulesOf[number]!);
      const { mean, error } = simulate(rules, 1, expected, 2500, 12);
      expect(Math.abs(mean - expected)).toBeLessThan(3.5 * error);
    },
  );
});

describe('cumulative sum', () => {
  type Input = { x: number[]; mu0: number; k: number; h: number };
  const table = reference<Input, { S_hi: number[]; S_lo: number[]; signals: number[] }>('4-nist-cusum');
  it(table.title, () => {
    const { x, mu0, k, h } = table.input;
    const points = cusum(x, mu0, { slack: k, limit: h });
    points.forEach(({ high, low }, place) => {
      expectAbsolute(high, table.expected.S_hi[place]!, 1e-9);
      expectAbsolute(low, table.expected.S_lo[place]!, 1e-9);
    });
    expect(points.flatMap(({ signal }, place) => (signal === 'up' ? [place + 1] : []))).toEqual(table.expected.signals);
    expect(points[13]!.since).toBe(12);
  });

  type Lengths = { h4: number[]; h5: number[]; 'h4.77': number; 'k0.25_h8.01': number };
  const lengths = reference<{ shift_sigma: number[] }, Lengths>('4-cusum-arl');
  it.each(lengths.input.shift_sigma)(`${lengths.title}: shift of %f`, (shift) => {
    const place = lengths.input.shift_sigma.indexOf(shift);
    expectRelative(cusumRunLength(shift, { slack: 0.5, limit: 4 }), lengths.expected.h4[place]!, 1e-6);
    expectRelative(cusumRunLength(shift, { slack: 0.5, limit: 5 }), lengths.expected.h5[place]!, 1e-6);
  });

  it(`${lengths.title}: the design for a given distance of false alarms`, () => {
    const one = designCusum(1, lengths.expected['h4.77']);
    expect(one.slack).toBe(0.5);
    expectAbsolute(one.limit, 4.77, 1e-3);
    expectAbsolute(designCusum(0.5, lengths.expected['k0.25_h8.01']).limit, 8.01, 1e-3);
  });

  it(`${lengths.title}: simulated false alarms and delay of the sums themselves`, () => {
    const random = seededRandom(21);
    for (const [shift, expected] of [
      [0, lengths.expected.h4[0]!],
      [1, lengths.expected.h4[4]!],
    ] as const) {
      const rounds = 1500;
      let total = 0;
      for (let round = 0; round < rounds; round++) {
        const values = Array.from({ length: Math.ceil(expected * 12) }, () => normalVariate(random) + shift);
        const first = cusum(values, 0, { slack: 0.5, limit: 4 }).findIndex(({ signal }) => signal !== null);
        total += first < 0 ? values.length : first + 1;
      }
      expect(Math.abs(total / rounds / expected - 1)).toBeLessThan(0.09);
    }
  });
});
