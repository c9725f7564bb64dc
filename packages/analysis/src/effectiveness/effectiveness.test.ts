import { describe, expect, it, vi } from 'vitest';
import { seededRandom } from '../numeric/random.ts';
import { evidenceAbove, evidenceBelow } from './effect-evidence.ts';
import { judgeEffect } from './judge-effect.ts';
import { judgeOverTime } from './judge-over-time.ts';
import { matureExposure } from './mature-exposure.ts';
import { neededExposure } from './needed-exposure.ts';
import { isLowerShown } from './power-to-show.ts';
import { recurrences } from './recurrence.ts';
import { supplyDate } from './supply-date.ts';

/** Simulations take as long as the machine needs. */
vi.setConfig({ testTimeout: 120_000 });

const poisson = (mean: number, random: () => number): number => {
  let count = 0;
  const wait = () => -Math.log(1 - random());
  for (let time = wait(); time < mean; time += wait()) count += 1;
  return count;
};

describe('judgeEffect', () => {
  const promised = { before: { failures: 30, exposure: 1e6 }, reduction: 0.8, plannedExposure: 8e5 };

  it('shows a reduction, keeps the promise, and says when the data are fewer than planned', () => {
    const early = judgeEffect(promised, { failures: 2, exposure: 5e5 });
    expect(early).toMatchObject({ verdict: 'held', fewerThanPlanned: true, promiseExcluded: false });
    expect(judgeEffect(promised, { failures: 5, exposure: 1e6 }).fewerThanPlanned).toBe(false);
  });

  it('does not read a verdict from too few data', () => {
    expect(judgeEffect(promised, { failures: 0, exposure: 1e4 }).verdict).toBe('not_shown_yet');
    expect(judgeEffect(promised, { failures: 0, exposure: null })).toMatchObject({
      verdict: 'not_shown_yet',
      reason: 'no_production',
    });
    const nothing = { before: { failures: 0, exposure: 1e6 }, reduction: 0.5, plannedExposure: null };
    expect(judgeEffect(nothing, { failures: 0, exposure: 1e6 })).toMatchObject({ reason: 'no_reports' });
  });

  it('excludes a promise that was not kept, even where the rate fell', () => {
    expect(judgeEffect(promised, { failures: 30, exposure: 1e6 }).verdict).toBe('did_not_hold');
    const better = judgeEffect(
      { ...promised, before: { failures: 400, exposure: 1e6 } },
      { failures: 200, exposure: 1e6 },
    );
    expect(better).toMatchObject({ verdict: 'did_not_hold', reductionShown: true, promiseExcluded: true });
  });

  it('refutes a promise of no failure by the first one', () => {
    expect(judgeEffect({ ...promised, reduction: 1 }, { failures: 1, exposure: 1e6 }).promiseExcluded).toBe(true);
    expect(judgeEffect({ ...promised, reduction: 1 }, { failures: 0, exposure: 1e6 }).verdict).toBe('held');
  });

  it('gives an interval over all looks that agrees with the claims and is wider than that of one look', () => {
    for (let failures = 0; failures <= 40; failures++) {
      const { ratio, ratioOverAllLooks, reductionShown, promiseExcluded } = judgeEffect(promised, {
        failures,
        exposure: 1e6,
      });
      expect(ratioOverAllLooks!.high! < 1).toBe(reductionShown);
      expect(ratioOverAllLooks!.low > 0.2).toBe(promiseExcluded);
      expect(ratioOverAllLooks!.low).toBeLessThanOrEqual(ratio.interval!.low);
      expect(ratioOverAllLooks!.high!).toBeGreaterThanOrEqual(ratio.interval!.high!);
    }
  });

  it('keeps a claim once made', () => {
    const history = judgeOverTime(promised, [
      { day: '2026-03-02', after: { failures: 0, exposure: 1e5 } },
      { day: '2026-03-09', after: { failures: 1, exposure: 6e5 } },
      { day: '2026-03-16', after: { failures: 9, exposure: 6.5e5 } },
    ]);
    expect(history.looks.map(({ judgement }) => judgement.verdict)).toEqual(['not_shown_yet', 'held', 'not_shown_yet']);
    expect(history).toMatchObject({ verdict: 'held', shownOn: '2026-03-09', excludedOn: null });
  });
});

describe('looking every week', () => {
  const weeks = 104;
  const rounds = 2000;

  /** Fraction of histories in which a claim is made at any of 104 weekly looks, over as long a time before. */
  function claimed(
    claim: 'reductionShown' | 'promiseExcluded',
    options: { before: number; ratio: number; seed: number },
  ) {
    const random = seededRandom(options.seed);
    let claims = 0;
    for (let round = 0; round < rounds; round++) {
      const before = { failures: poisson(options.before, random), exposure: 52 };
      let failures = 0;
      for (let week = 1; week <= weeks; week++) {
        failures += poisson((options.ratio * options.before) / 52, random);
        const after = { failures, exposure: week };
        const evidence =
          claim === 'reductionShown' ? evidenceBelow(before, after, 1, 0.4) : evidenceAbove(before, after, 0.4);
        if (evidence >= 20) {
          claims += 1;
          break;
        }
      }
    }
    return claims / rounds;
  }

  /** Three standard errors of a fraction of 0.05. */
  const slack = 3 * Math.sqrt((0.05 * 0.95) / rounds);

  it.each([3, 8, 25])('an unchanged rate is called lower in at most 5 %%: %i failures before', (before) => {
    expect(claimed('reductionShown', { before, ratio: 1, seed: before })).toBeLessThan(0.05 + slack);
  });

  it.each([8, 25])('a kept promise is called broken in at most 5 %%: %i failures before', (before) => {
    expect(claimed('promiseExcluded', { before, ratio: 0.4, seed: 100 + before })).toBeLessThan(0.05 + slack);
  });

  it('a real reduction, and a broken promise, are found as often as planned', () => {
    const before = 40;
    const plan = neededExposure({ failures: before, exposure: 52 }, 0.6);
    expect(plan.value).toBeLessThan(weeks);
    expect(claimed('reductionShown', { before, ratio: 0.4, seed: 9 })).toBeGreaterThan(0.8);
    expect(claimed('promiseExcluded', { before, ratio: 1, seed: 10 })).toBeGreaterThan(0.8);
  });

  it('the test for one look, repeated every week, would not be safe', () => {
    const random = seededRandom(4);
    let claims = 0;
    for (let round = 0; round < 500; round++) {
      const before = { failures: poisson(25, random), exposure: 52 };
      const proof = { looks: 'one', promisedRatio: 0.4, alpha: 0.05 } as const;
      let failures = 0;
      for (let week = 1; week <= weeks; week++) {
        failures += poisson(25 / 52, random);
        if (!isLowerShown(before, { failures, exposure: week }, proof)) continue;
        claims += 1;
        break;
      }
    }
    expect(claims / 500).toBeGreaterThan(0.1);
  });
});

describe('neededExposure', () => {
  it('needs more for looks at any time than for one, more for less reduction, and more for more power', () => {
    const before = { failures: 24, exposure: 1e6 };
    const any = neededExposure(before, 0.7);
    const one = neededExposure(before, 0.7, { looks: 'one' });
    expect(any.value!).toBeGreaterThan(one.value!);
    expect(any.value!).toBeLessThan(3 * one.value!);
    expect(neededExposure(before, 0.6).value!).toBeGreaterThan(any.value!);
    expect(neededExposure(before, 0.7, { power: 0.9 }).value!).toBeGreaterThan(any.value!);
  });

  it('says why there is none', () => {
    expect(neededExposure({ failures: 0, exposure: 1e6 }, 0.5)).toEqual({ value: null, reason: 'no_reports' });
    expect(neededExposure({ failures: 3, exposure: null }, 0.5)).toEqual({ value: null, reason: 'no_production' });
    expect(neededExposure({ failures: 3, exposure: 1e6 }, 0.3)).toEqual({ value: null, reason: 'too_few' });
  });
});

describe('supplyDate', () => {
  it('counts days, follows a week, and waits for failures still to come', () => {
    expect(supplyDate(100, { from: '2026-03-02', perDay: [10] })).toBe('2026-03-11');
    expect(supplyDate(101, { from: '2026-03-02', perDay: [20, 20, 20, 20, 20, 0, 0] })).toBe('2026-03-09');
    expect(supplyDate(0, { from: '2026-03-02', perDay: [10] })).toBe('2026-03-01');
    expect(supplyDate(5, { from: '2026-03-02', perDay: [0] })).toBeNull();
    const late = supplyDate(100, { from: '2026-03-02', perDay: [10], maturityByMonth: [0, 0, 1] })!;
    expect(late > '2026-04-15').toBe(true);
  });
});

it('mature exposure counts young builds in part', () => {
  expect(
    matureExposure([
      { exposure: 1000, maturity: 1 },
      { exposure: 1000, maturity: 0.25 },
    ]),
  ).toBe(1250);
  expect(() => matureExposure([{ exposure: 1, maturity: 1.1 }])).toThrow(RangeError);
});

it('recurrences: same part, cause and tool, built after the clean point; uncertain where a fact is missing', () => {
  const fixed = { part: 'H-1', cause: 'tooling', tool: 'T-7', cleanPoint: '2026-02-10' };
  const same = { part: 'H-1', cause: 'tooling', tool: 'T-7', builtOn: '2026-02-10', foundOn: '2026-03-01' };
  expect(
    recurrences(fixed, [
      { key: 'sure', ...same },
      { key: 'built before', ...same, builtOn: '2026-02-09' },
      { key: 'other tool', ...same, tool: 'T-8' },
      { key: 'no tool', ...same, tool: null },
      { key: 'no cause', ...same, cause: null },
      { key: 'no build day', ...same, builtOn: null },
      { key: 'other part', ...same, part: 'H-2' },
    ]),
  ).toEqual({ certain: ['sure'], possible: ['no tool', 'no cause', 'no build day'] });
});
