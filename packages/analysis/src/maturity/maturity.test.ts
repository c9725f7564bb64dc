import { describe, expect, it, vi } from 'vitest';
import { poissonVariate } from '../numeric/poisson-variate.ts';
import { seededRandom } from '../numeric/random.ts';
import { chainLadder } from './chain-ladder.ts';
import { maturityByAge } from './maturity-by-age.ts';
import { addMonths, type FailureMonths, triangle } from './triangle.ts';
import { warrantyForecast } from './warranty-forecast.ts';
import { weibullFractionFailed, weibullLife } from './weibull.ts';

/** Simulations take as long as the machine needs. */
vi.setConfig({ testTimeout: 120_000 });

const months = Array.from({ length: 12 }, (_, i) => addMonths('2025-04', i));
const last = '2026-03';
/** Fraction of all failures that is reported in each month of service. */
const byAge = [0.05, 0.25, 0.25, 0.2, 0.1, 0.08, 0.07];

describe('triangle', () => {
  it('cumulates by month of building and age, and counts what it leaves out', () => {
    const { rows, leftOut } = triangle(
      [
        { month: '2026-01', produced: 500 },
        { month: '2025-12', produced: null },
        { month: '2026-04', produced: 10 },
      ],
      [
        { built: '2025-12', failed: '2025-12', count: 2 },
        { built: '2025-12', failed: '2026-02', count: 3 },
        { built: '2026-01', failed: '2026-03', count: 4 },
        { built: '2026-01', failed: '2025-12', count: 1 },
        { built: '2026-01', failed: '2026-04', count: 7 },
        { built: '2024-01', failed: '2026-01', count: 9 },
      ],
      last,
    );
    expect(rows).toEqual([
      { month: '2025-12', produced: null, age: 3, cumulative: [2, 2, 5, 5] },
      { month: '2026-01', produced: 500, age: 2, cumulative: [0, 0, 4] },
    ]);
    expect(leftOut).toEqual({ beforeBuilt: 1, afterLast: 7, monthNotListed: 9 });
    expect(() => triangle([{ month: '2026-13', produced: 1 }], [], last)).toThrow(RangeError);
  });
});

describe('forecast', () => {
  const random = seededRandom(8);

  function history(rate: number) {
    const failures: FailureMonths[] = months.flatMap((built) =>
      byAge.map((share, age) => ({
        built,
        failed: addMonths(built, age),
        count: poissonVariate(20_000 * rate * share, random),
      })),
    );
    const { rows } = triangle(
      months.map((month) => ({ month, produced: 20_000 })),
      failures,
      last,
    );
    const coming = failures.filter(({ failed }) => failed > last).reduce((sum, { count }) => sum + count, 0);
    return { rows, coming };
  }

  it('covers what came about as often as it says', () => {
    const known = byAge.map((_, age) => byAge.slice(0, age + 1).reduce((sum, share) => sum + share, 0));
    const rounds = 400;
    let covered = 0;
    for (let round = 0; round < rounds; round++) {
      const { rows, coming } = history(0.002);
      const { total } = warrantyForecast(rows, known, { last, horizonMonths: 6 });
      if (total.interval!.low <= coming && coming <= total.interval!.high!) covered += 1;
    }
    expect(covered / rounds).toBeGreaterThan(0.92);
  });

  it('learns the maturity from the triangle itself, and adds up over its months', () => {
    const { rows } = history(0.05);
    const { steps, rows: projected } = chainLadder(rows.map(({ cumulative }) => cumulative));
    const fractions = maturityByAge(steps);
    expect(Math.abs(fractions[2]! - 0.55)).toBeLessThan(0.03);
    expect(fractions.at(-1)).toBe(1);
    expect(Math.abs(projected[8]!.final.value! / 1000 - 1)).toBeLessThan(0.15);
    const forecast = warrantyForecast(rows, fractions, { last, horizonMonths: 12 });
    const sum = forecast.months.reduce((total, { failures }) => total + failures.value!, 0);
    expect(forecast.total.value).toBeCloseTo(sum, 9);
    expect(forecast.months[0]!.month).toBe('2026-04');
    expect(forecast.months.at(-1)!.failures).toMatchObject({ value: 0, interval: { low: 0, high: 0 } });
  });

  it('claims nothing for a build month without a report so far', () => {
    const { rows, steps } = chainLadder([[1, 4, 6], [2, 5], [0]]);
    expect(rows[2]).toMatchObject({ latest: 0, final: { reason: 'too_few' }, maturity: null });
    expect(rows[1]!.final.value).toBeCloseTo(7.5, 12);
    expect(maturityByAge(steps)[0]).toBeCloseTo(1 / 3 / 1.5, 12);
    expect(chainLadder([[0, 4], [0]]).steps[0]!.factor).toBeNull();
    expect(() => chainLadder([[1], [1, 2]])).toThrow(RangeError);
  });

  it('says why there is no forecast', () => {
    const rows = [{ month: '2026-03', produced: null, age: 0, cumulative: [3] }];
    expect(warrantyForecast(rows, [0.5, 1], { last, horizonMonths: 1 }).total.reason).toBe('no_production');
    const built = [{ ...rows[0]!, produced: 100 }];
    expect(warrantyForecast(built, [null, 1], { last, horizonMonths: 1 }).total.reason).toBe('too_few');
  });
});

describe('weibullLife', () => {
  it('covers shape, life and the fraction failed, most units still good', () => {
    const random = seededRandom(14);
    const rounds = 400;
    const covered = { shape: 0, life: 0, fraction: 0 };
    for (let round = 0; round < rounds; round++) {
      const lifetimes = Array.from({ length: 300 }, () => {
        const time = 40 * (-Math.log(1 - random())) ** (1 / 1.6);
        const end = 4 + 20 * random();
        return { time: Math.min(time, end), failed: time <= end };
      });
      const life = weibullLife(lifetimes);
      if (life.reason !== null) throw new Error(life.reason);
      const holds = (interval: { low: number; high: number | null }, truth: number): number =>
        interval.low <= truth && truth <= interval.high! ? 1 : 0;
      covered.shape += holds(life.shape.interval!, 1.6);
      covered.life += holds(life.characteristicLife.interval!, 40);
      covered.fraction += holds(weibullFractionFailed(life, 12).interval!, 1 - Math.exp(-((12 / 40) ** 1.6)));
    }
    for (const count of Object.values(covered)) {
      expect(count / rounds).toBeGreaterThan(0.91);
      expect(count / rounds).toBeLessThan(0.985);
    }
  });

  it('says why there is none', () => {
    expect(
      weibullLife([
        { time: 3, failed: true },
        { time: 5, failed: false },
      ]),
    ).toMatchObject({ reason: 'too_few' });
    expect(weibullLife([{ time: 3, failed: true, units: 4 }])).toMatchObject({ reason: 'not_finite' });
    expect(() => weibullLife([{ time: 0, failed: true }])).toThrow(RangeError);
  });
});
