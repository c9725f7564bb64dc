import { describe, expect, it, vi } from 'vitest';
import { poissonVariate } from '../numeric/poisson-variate.ts';
import { seededRandom } from '../numeric/random.ts';
import { gammaVariate } from '../numeric/variates.ts';
import { changePoint } from './change-point.ts';
import { explainSignals } from './explain-signals.ts';
import { type Combination, findSignals } from './find-signals.ts';

/** Simulations take as long as the machine needs. */
vi.setConfig({ testTimeout: 120_000 });

/** A plant of 40 tools, 30 lots, 60 fixture positions and 25 parts, three of which fail at several times the usual rate. */
function plant(seed: number): { combinations: Combination[]; planted: Set<string> } {
  const random = seededRandom(seed);
  const dimensions = { tool: 40, lot: 30, position: 60, part: 25 };
  const planted = new Map([
    [`tool ${Math.floor(random() * 40)}`, 4],
    [`lot ${Math.floor(random() * 30)}`, 5],
    [`position ${Math.floor(random() * 60)}`, 6],
  ]);
  const combinations = Object.entries(dimensions).flatMap(([dimension, count]) =>
    Array.from({ length: count }, (_, place) => {
      const key = `${dimension} ${place}`;
      const expected = 2 + 8 * random();
      return { key, dimension, expected, observed: poissonVariate(expected * (planted.get(key) ?? 1), random) };
    }),
  );
  return { combinations, planted: new Set(planted.keys()) };
}

describe('findSignals over 200 simulated plants', () => {
  let [found, planted, falseShare, signals] = [0, 0, 0, 0];
  for (let seed = 1; seed <= 200; seed++) {
    const simulated = plant(seed);
    const list = findSignals(simulated.combinations).signals;
    const right = list.filter(({ key }) => simulated.planted.has(key)).length;
    found += right;
    planted += simulated.planted.size;
    signals += list.length;
    falseShare += list.length === 0 ? 0 : (list.length - right) / list.length;
  }

  it('finds the planted truths', () => {
    expect(found / planted).toBeGreaterThan(0.93);
  });

  it('raises no more false signals than the 10 % promised, and some', () => {
    expect(falseShare / 200).toBeLessThan(0.1);
    expect(signals).toBeGreaterThan(found);
  });

  it('raises hardly any where nothing is wrong', () => {
    const random = seededRandom(77);
    let plants = 0;
    for (let seed = 0; seed < 200; seed++) {
      const combinations = Array.from({ length: 150 }, (_, place) => {
        const expected = 0.5 + 9 * random();
        return { key: `${place}`, dimension: 'tool', expected, observed: poissonVariate(expected, random) };
      });
      if (findSignals(combinations).signals.length > 0) plants += 1;
    }
    expect(plants / 200).toBeLessThan(0.1 + 3 * Math.sqrt((0.1 * 0.9) / 200));
  });
});

describe('members that usually differ', () => {
  it('are no signals over 200 plants, however large the counts; what is out of the ordinary among them is found', () => {
    let [found, planted, falseShare] = [0, 0, 0];
    for (let seed = 1; seed <= 200; seed++) {
      const random = seededRandom(1000 + seed);
      const bad = new Set([Math.floor(random() * 60), Math.floor(random() * 60)]);
      const combinations = Array.from({ length: 60 }, (_, place) => {
        const expected = 20 + 400 * random();
        const usual = gammaVariate(15, random) / 15;
        const ratio = bad.has(place) ? 4 * usual : usual;
        return { key: `${place}`, dimension: 'part', expected, observed: poissonVariate(expected * ratio, random) };
      });
      const { signals } = findSignals(combinations);
      const right = signals.filter(({ key }) => bad.has(Number(key))).length;
      found += right;
      planted += bad.size;
      falseShare += signals.length === 0 ? 0 : (signals.length - right) / signals.length;
    }
    expect(found / planted).toBeGreaterThan(0.9);
    expect(falseShare / 200).toBeLessThan(0.1 + 3 * Math.sqrt((0.1 * 0.9) / 200));
  });
});

describe('ranking', () => {
  it('puts much excess before a large ratio on few failures, and leaves out what nothing was expected of', () => {
    const usual = Array.from({ length: 50 }, (_, i) => ({ key: `u${i}`, dimension: 'd', observed: 10, expected: 10 }));
    const { signals, tested, withoutExpectation } = findSignals([
      ...usual,
      { key: 'few', dimension: 'd', observed: 5, expected: 0.3 },
      { key: 'many', dimension: 'd', observed: 90, expected: 30 },
      { key: 'unknown', dimension: 'd', observed: 9, expected: 0 },
    ]);
    expect(signals.map(({ key }) => key)).toEqual(['many', 'few']);
    expect({ tested, withoutExpectation }).toEqual({ tested: 52, withoutExpectation: 1 });
    expect(signals[0]!.ratio).toBeLessThan(3);
    expect(signals[0]!.interval.low).toBeGreaterThan(1.5);
  });

  it('tells an echo from a signal of its own', () => {
    const usual = Array.from({ length: 30 }, (_, i) => ({ key: `u${i}`, dimension: 'd', observed: 10, expected: 10 }));
    const { signals } = findSignals([
      ...usual,
      { key: 'tool', dimension: 'd', observed: 80, expected: 20 },
      { key: 'its lot', dimension: 'd', observed: 50, expected: 20 },
      { key: 'another', dimension: 'd', observed: 45, expected: 15 },
    ]);
    const explained = explainSignals(signals, (a, b) =>
      a === 'its lot' && b === 'tool' ? { observed: 34, expected: 6 } : null,
    );
    expect(Object.fromEntries(explained.map(({ key, explainedBy }) => [key, explainedBy]))).toEqual({
      tool: null,
      'its lot': 'tool',
      another: null,
    });
  });
});

describe('changePoint', () => {
  const series = (counts: number[]) => counts.map((failures) => ({ failures, exposure: 1 }));

  it('says why there is none', () => {
    expect(changePoint(series([1, 2]), { seed: 1 })).toMatchObject({ reason: 'too_few' });
    expect(changePoint(series([0, 0, 0]), { seed: 1 })).toMatchObject({ reason: 'no_reports' });
    expect(changePoint([...series([1, 2]), { failures: 1, exposure: 0 }], { seed: 1 })).toMatchObject({
      reason: 'no_production',
    });
  });

  it('dates a rate per terminal as it dates one per week', () => {
    const counts = [2, 1, 3, 2, 2, 1, 2, 9, 11, 8, 12, 10];
    const dated = (exposure: number) =>
      changePoint(
        counts.map((failures) => ({ failures, exposure })),
        { seed: 1, replicates: 199 },
      );
    const [perWeek, perTerminal] = [dated(1), dated(2_700_000)];
    expect(perTerminal).toMatchObject({ at: 7, p: 0.005, interval: { low: 7, high: 7 } });
    expect(perTerminal).toMatchObject({ at: perWeek.reason === null ? perWeek.at : null });
    if (perWeek.reason === null && perTerminal.reason === null)
      expect(perTerminal.statistic).toBeCloseTo(perWeek.statistic, 6);
  });

  it('calls a change in a steady series as seldom as it says, and covers a real one', () => {
    const random = seededRandom(5);
    let [alarms, covered, found] = [0, 0, 0];
    const rounds = 200;
    for (let round = 0; round < rounds; round++) {
      const exposures = Array.from({ length: 40 }, () => 0.5 + random());
      const draw = (rate: (place: number) => number) =>
        changePoint(
          exposures.map((exposure, place) => ({ exposure, failures: poissonVariate(exposure * rate(place), random) })),
          { seed: round, replicates: 99 },
        );
      const steady = draw(() => 6);
      if (steady.reason === null && steady.p <= 0.05) alarms += 1;
      const changed = draw((place) => (place < 25 ? 5 : 9));
      if (changed.reason !== null) continue;
      if (changed.p <= 0.05) found += 1;
      if (changed.interval.low <= 25 && 25 <= changed.interval.high) covered += 1;
    }
    expect(alarms / rounds).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / rounds));
    expect(found / rounds).toBeGreaterThan(0.85);
    expect(covered / rounds).toBeGreaterThan(0.9);
  });
});
