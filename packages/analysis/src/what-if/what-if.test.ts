import { describe, expect, it } from 'vitest';
import { seededRandom } from '../numeric/random.ts';
import { bestSet } from './best-set.ts';
import { type CauseCost, meanEffect, type PreventionOption } from './options.ts';
import { simulateOptions } from './simulate-options.ts';

const causes: CauseCost[] = [
  { cause: 'partial_seat', sum: 900_000, sumOfSquares: 900_000 * 3000 },
  { cause: 'tooling', sum: 300_000, sumOfSquares: 300_000 * 1000 },
];
const lock: PreventionOption = {
  key: 'secondary lock',
  onceCost: 500_000,
  yearlyCost: 40_000,
  effects: [{ cause: 'partial_seat', low: 0.6, likely: 0.8, high: 0.9 }],
};
const check: PreventionOption = {
  key: 'push-click-pull',
  onceCost: 0,
  yearlyCost: 60_000,
  effects: [{ cause: 'partial_seat', low: 0.2, likely: 0.5, high: 0.7 }],
};
const settings = { years: 2, horizonYears: 3, seed: 5 };

describe('simulateOptions', () => {
  const run = (options: PreventionOption[], overrides = {}) => {
    const result = simulateOptions(causes, options, { ...settings, ...overrides });
    if (result.reason !== null) throw new Error(result.reason);
    return result;
  };

  it('gives expected values in closed form, intervals around them, and the same figures twice', () => {
    const result = run([lock]);
    expect(result.savingPerYear.value).toBeCloseTo(450_000 * meanEffect(lock.effects[0]!), 6);
    expect(result.netPerYear.value).toBeCloseTo(result.savingPerYear.value! - 40_000, 6);
    expect(result.paybackYears.value).toBeCloseTo(500_000 / result.netPerYear.value!, 9);
    expect(result.savingPerYear.interval!.low).toBeLessThan(result.savingPerYear.value!);
    expect(result.savingPerYear.interval!.high!).toBeGreaterThan(result.savingPerYear.value!);
    expect(run([lock])).toEqual(result);
    expect(run([lock], { seed: 6 })).not.toEqual(result);
  });

  it('two options on the same faults save less than the sum of both, and no more than there is', () => {
    const together = run([lock, check]).savingPerYear;
    expect(together.value!).toBeLessThan(run([lock]).savingPerYear.value! + run([check]).savingPerYear.value!);
    const left = (1 - meanEffect(lock.effects[0]!)) * (1 - meanEffect(check.effects[0]!));
    expect(together.value).toBeCloseTo(450_000 * (1 - left), 6);
  });

  it('pays surely, never, or sometimes', () => {
    expect(run([{ ...lock, onceCost: 1, yearlyCost: 0 }]).probabilityPays).toBe(1);
    const never = run([{ ...lock, yearlyCost: 2_000_000 }]);
    expect(never).toMatchObject({ probabilityPays: 0, paybackYears: { reason: 'not_finite' } });
    const even = run([{ ...lock, onceCost: 3 * run([lock]).netPerYear.value! }]);
    expect(even.probabilityPays).toBeGreaterThan(0.3);
    expect(even.probabilityPays).toBeLessThan(0.7);
    expect(run([{ ...lock, yearlyCost: 300_000 }]).paybackYears.interval!.high).toBeNull();
  });

  it('says what is missing and refuses impossible ranges', () => {
    expect(simulateOptions([], [lock], settings)).toMatchObject({ reason: 'no_cost' });
    const wrong = { ...lock, effects: [{ cause: 'tooling', low: 0.5, likely: 0.4, high: 0.9 }] };
    expect(() => simulateOptions(causes, [wrong], settings)).toThrow(RangeError);
  });
});

describe('bestSet', () => {
  const random = seededRandom(17);

  function randomCase(count: number) {
    const names = ['a', 'b', 'c', 'd'];
    const costs = names.map((cause) => ({ cause, sum: 1e5 + 1e6 * random(), sumOfSquares: 1e9 }));
    const options = Array.from(
      { length: count },
      (_, i): PreventionOption => ({
        key: `o${i}`,
        onceCost: Math.round(6e5 * random()),
        yearlyCost: Math.round(5e4 * random()),
        effects: names
          .filter(() => random() < 0.6)
          .map((cause) => {
            const [low, likely, high] = [random(), random(), random()].sort((x, y) => x - y) as [
              number,
              number,
              number,
            ];
            return { cause, low, likely, high };
          }),
        excludes: random() < 0.3 ? [`o${Math.floor(count * random())}`].filter((key) => key !== `o${i}`) : [],
      }),
    );
    return { costs, options, limits: { years: 1.5, horizonYears: 2.5, budget: 9e5 * random() } };
  }

  /** Worth of a set, written out. */
  function worthOf(
    costs: CauseCost[],
    set: PreventionOption[],
    { years, horizonYears }: { years: number; horizonYears: number },
  ) {
    let worth = 0;
    for (const { cause, sum } of costs) {
      let left = 1;
      for (const { effects } of set)
        for (const e of effects) if (e.cause === cause) left *= 1 - (e.low + 4 * e.likely + e.high) / 6;
      worth += (horizonYears * sum * (1 - left)) / years;
    }
    for (const { onceCost, yearlyCost } of set) worth -= onceCost + horizonYears * yearlyCost;
    return worth;
  }

  it('finds the best of all sets, tried one by one', () => {
    for (let round = 0; round < 40; round++) {
      const { costs, options, limits } = randomCase(3 + (round % 8));
      let best = 0;
      for (let mask = 0; mask < 2 ** options.length; mask++) {
        const set = options.filter((_, i) => mask & (1 << i));
        const once = set.reduce((sum, { onceCost }) => sum + onceCost, 0);
        const keys = new Set(set.map(({ key }) => key));
        if (once > limits.budget || set.some(({ excludes }) => excludes!.some((key) => keys.has(key)))) continue;
        best = Math.max(best, worthOf(costs, set, limits));
      }
      const found = bestSet(costs, options, limits);
      expect(found.worth).toBeCloseTo(best, 4);
      expect(found.onceCost).toBeLessThanOrEqual(limits.budget);
      const chosen = options.filter(({ key }) => found.keys.includes(key));
      expect(worthOf(costs, chosen, limits)).toBeCloseTo(found.worth, 4);
    }
  });

  it('does better than taking the best single option first', () => {
    const option = (key: string, onceCost: number, effect: number): PreventionOption => ({
      key,
      onceCost,
      yearlyCost: 0,
      effects: [{ cause: key === 'big' ? 'partial_seat' : key, low: effect, likely: effect, high: effect }],
    });
    const costs = ['partial_seat', 'left', 'right'].map((cause) => ({ cause, sum: 1000, sumOfSquares: 1000 }));
    const options = [option('big', 600, 0.9), option('left', 500, 0.85), option('right', 500, 0.85)];
    expect(bestSet(costs, options, { years: 1, horizonYears: 1, budget: 1000 }).keys).toEqual(['left', 'right']);
  });

  it('takes nothing that is not worth it, and at most twelve options', () => {
    expect(bestSet(causes, [{ ...lock, yearlyCost: 1e9 }], { years: 1, horizonYears: 1, budget: 1e9 }).keys).toEqual(
      [],
    );
    const many = Array.from({ length: 13 }, (_, i) => ({ ...lock, key: `${i}` }));
    expect(() => bestSet(causes, many, { years: 1, horizonYears: 1, budget: 1 })).toThrow(RangeError);
  });
});
