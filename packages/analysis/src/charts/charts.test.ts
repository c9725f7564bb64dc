import { describe, expect, it, vi } from 'vitest';
import { seededRandom } from '../numeric/random.ts';
import { gammaVariate } from '../numeric/variates.ts';
import { attributeChart } from './attribute-chart.ts';
import { chooseChart } from './choose-chart.ts';
import { gChart } from './gap-charts.ts';
import { runSignals } from './run-rules.ts';

/** Simulations take as long as the machine needs. */
vi.setConfig({ testTimeout: 120_000 });

const random = seededRandom(3);
const poisson = (mean: number): number => {
  const wait = () => -Math.log(1 - random());
  let count = 0;
  for (let time = wait(); time < mean; time += wait()) count += 1;
  return count;
};

const periods = (failures: number[], exposure: number | null = 1000) =>
  failures.map((count, place) => ({ key: `${place}`, failures: count, exposure }));

describe('phases and limits', () => {
  const samples = [4, 6, 5, 5, 20, 22, 18, 20].map((count, place) => ({ key: `w${place}`, count, size: 10 }));

  it('splits at given points, each phase by its own points', () => {
    const { points, phases } = attributeChart('u', samples, { phaseStarts: ['w4'] });
    expect(phases!.map(({ fromKey, centre, baselinePoints }) => [fromKey, centre, baselinePoints])).toEqual([
      ['w0', 0.5, 4],
      ['w4', 2, 4],
    ]);
    expect(points!.map(({ phase }) => phase)).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
  });

  it('freezes limits at the first points, or lets them roll', () => {
    const frozen = attributeChart('u', samples, { limits: { mode: 'frozen', points: 4 } });
    expect(frozen.points!.map(({ centre }) => centre)).toEqual(Array(8).fill(0.5));
    expect(runSignals(frozen.points!, ['sudden_jump']).map(({ at }) => at)).toEqual([4, 5, 6, 7]);
    const rolling = attributeChart('u', samples, { limits: { mode: 'rolling', points: 2 } });
    expect(rolling.points!.map(({ centre }) => centre)).toEqual([0.5, 0.5, 0.5, 0.55, 0.5, 1.25, 2.1, 2]);
    expect(rolling.points!.map(({ inBaseline }) => inBaseline)).toEqual([true, true, ...Array(6).fill(false)]);
  });

  it('says why there is no chart', () => {
    expect(attributeChart('u', samples.slice(0, 1)).reason).toBe('too_few');
    expect(
      attributeChart(
        'u',
        samples.map((sample) => ({ ...sample, size: 0 })),
      ).reason,
    ).toBe('no_production');
    expect(
      attributeChart(
        'u',
        samples.map((sample) => ({ ...sample, count: 0 })),
      ).reason,
    ).toBe('no_reports');
    expect(attributeChart('u', samples, { phaseStarts: ['w7'] }).reason).toBe('too_few');
    expect(() => attributeChart('u', samples, { phaseStarts: ['nowhere'] })).toThrow(RangeError);
  });

  it('does not let a run cross a phase', () => {
    const points = Array.from({ length: 10 }, (_, place) => ({ z: 0.5, phase: place < 5 ? 0 : 1 }));
    expect(runSignals(points, ['level_shift'])).toEqual([]);
  });
});

describe('choice of the chart', () => {
  it('takes gaps for rare faults and counts for the rest, corrected when they vary too much', () => {
    expect(chooseChart(periods([0, 1, 0, 0, 2, 0]))).toMatchObject({ kind: 'g', because: 'rare_with_exposure' });
    expect(chooseChart(periods([0, 1, 0, 0, 2, 0], null))).toMatchObject({ kind: 't' });
    expect(chooseChart(periods([20, 24, 18, 19, 22, 21]))).toMatchObject({ kind: 'u', corrected: false });
    expect(chooseChart(periods([20, 64, 18, 3, 42, 21]))).toMatchObject({ kind: 'u', corrected: true });
    expect(chooseChart(periods([20, 24, 18], null))).toMatchObject({ kind: 'c', because: 'enough_without_exposure' });
    expect(chooseChart(periods([2, 4, 1]), true)).toMatchObject({ kind: 'p' });
    expect(chooseChart(periods([0, 0, 0]))).toEqual({ kind: null, reason: 'no_reports' });
    expect(chooseChart(periods([3]))).toEqual({ kind: null, reason: 'too_few' });
  });
});

describe('false alarms in control', () => {
  /** Three-sigma limits: 0.0027 for normal values. */
  const usual = 0.0027;

  it('a corrected u chart of a large overdispersed volume keeps to them, an uncorrected one does not', () => {
    const samples = Array.from({ length: 4000 }, (_, place) => {
      const size = 80_000 + 40_000 * random();
      return { key: `${place}`, size, count: poisson((size * 0.004 * gammaVariate(150, random)) / 150) };
    });
    const alarms = (corrected: boolean) =>
      runSignals(attributeChart('u', samples, { corrected }).points!, ['sudden_jump']).length / samples.length;
    expect(alarms(true)).toBeLessThan(2 * usual);
    expect(alarms(false)).toBeGreaterThan(10 * usual);
  });

  it('a g chart alarms as seldom on either side for geometric gaps', () => {
    const gaps = Array.from({ length: 40_000 }, (_, place) => ({
      key: `${place}`,
      gap: Math.floor(Math.log(1 - random()) / Math.log(1 - 1 / 3000)),
    }));
    const { points } = gChart(gaps);
    const alarms = runSignals(points!, ['sudden_jump']);
    expect(Math.abs(alarms.length / gaps.length - usual)).toBeLessThan(0.0008);
    for (const { z, value, low, high } of points!) {
      expect(z < -3).toBe(low !== null && value < low);
      expect(z > 3).toBe(value > high!);
    }
  });
});
