import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../calendar/day.ts';
import { chainLadder } from '../maturity/chain-ladder.ts';
import { maturityByAge } from '../maturity/maturity-by-age.ts';
import { countEffect, looksSince } from './count-effect.ts';
import { reportingDelay } from './reporting-delay.ts';
import { stateProof } from './state-proof.ts';

const today = '2026-06-14';
const report = (age: number, delay: number, reports = 1) => ({
  builtOn: addDays(today, -age),
  foundOn: addDays(today, delay - age),
  reports,
});

describe('reportingDelay', () => {
  it('is the chain ladder with a row for each day of building', () => {
    const anyReport = fc
      .tuple(fc.integer({ min: 0, max: 70 }), fc.integer({ min: 0, max: 70 }), fc.integer({ min: 1, max: 9 }))
      .filter(([age, delay]) => delay <= age)
      .map(([age, delay, reports]) => report(age, delay, reports));
    fc.assert(
      fc.property(fc.array(anyReport, { minLength: 1, maxLength: 60 }), (some) => {
        // a first report on the oldest day, so that every step of the ladder has a factor
        const reports = [report(71, 0), ...some];
        const rows = Array.from({ length: 72 }, (_, place) => {
          const age = 71 - place;
          const own = reports.filter(({ builtOn }) => builtOn === addDays(today, -age));
          return Array.from({ length: age + 1 }, (_, delay) =>
            own
              .filter(({ builtOn, foundOn }) => foundOn <= addDays(builtOn, delay))
              .reduce((sum, it) => sum + it.reports, 0),
          );
        });
        const ladder = maturityByAge(chainLadder(rows).steps);
        const months = reportingDelay(reports, today)!;
        months.forEach((fraction, month) => {
          const expected = ladder[Math.round(month * (365.25 / 12))] ?? 1;
          expect(fraction).toBeCloseTo(expected, 10);
        });
      }),
    );
  });

  it('is not misled by young builds, which can have shown short delays only', () => {
    const half = Array.from({ length: 400 }, (_, age) => [
      report(age, 0),
      ...(age >= 60 ? [report(age, 60)] : []),
    ]).flat();
    const months = reportingDelay(half, today)!;
    expect(months[0]).toBeCloseTo(0.5, 10);
    expect(months.at(-1)).toBe(1);
  });

  it('says nothing without a report, and everything at once where nothing comes late', () => {
    expect(reportingDelay([], today)).toBeNull();
    expect(reportingDelay([report(5, 0), report(0, 0)], today)).toEqual([1]);
  });
});

describe('countEffect', () => {
  const builds = Array.from({ length: 100 }, (_, ago) => ({ day: addDays(today, -ago), exposure: 1000 }));
  const reports = [report(50, 0, 2), report(50, 45), report(10, 0)];

  it('counts the failures of the builds of a period as known on a day, over what was built until then', () => {
    const data = { builds, reports, maturity: null };
    const period = { from: addDays(today, -60), to: addDays(today, -40) };
    expect(countEffect(data, period, addDays(today, -20))).toEqual({ failures: 2, exposure: 20_000 });
    expect(countEffect(data, period, today)).toEqual({ failures: 3, exposure: 20_000 });
    expect(countEffect(data, { from: '2020-01-01', to: '2020-02-01' }, today)).toEqual({ failures: 0, exposure: null });
  });

  it('weighs young builds less where failures come late, so that before and after can be compared', () => {
    const data = { builds, reports, maturity: [0, 0.5, 1] };
    const old = countEffect(data, { from: addDays(today, -80), to: addDays(today, -70) }, today);
    const young = countEffect(data, { from: addDays(today, -9), to: addDays(today, 1) }, today);
    expect(old.exposure).toBe(10_000);
    expect(young.exposure).toBeGreaterThan(0);
    expect(young.exposure).toBeLessThan(1500);
  });

  it('looks every week and today, with counts that only grow', () => {
    const looks = looksSince({ builds, reports, maturity: null }, addDays(today, -20), today);
    expect(looks.map(({ day }) => day)).toEqual([addDays(today, -14), addDays(today, -7), today]);
    expect(looks.map(({ after }) => after)).toEqual([
      { failures: 0, exposure: 7000 },
      { failures: 1, exposure: 14_000 },
      { failures: 1, exposure: 21_000 },
    ]);
    expect(looksSince({ builds, reports, maturity: null }, addDays(today, 1), today)).toEqual([]);
  });
});

describe('stateProof', () => {
  const builds = Array.from({ length: 180 }, (_, ago) => ({ day: addDays(today, -ago), exposure: 10_000 }));
  const reports = Array.from({ length: 36 }, (_, place) => report(5 * place + 1, 0));
  const plan = { before: { from: addDays(today, -179), to: today }, cleanPoint: addDays(today, 7), reduction: 0.8 };

  it('names the rate before, the exposure that proves the promise, and the day of its supply at the present pace', () => {
    const proof = stateProof({ builds, reports, maturity: null }, plan, today);
    expect(proof.before).toEqual({ failures: 36, exposure: 1_790_000 });
    expect(proof.rateBefore.value).toBeCloseTo(36 / 1.79, 10);
    expect(proof.perDay).toBe(10_000);
    if (proof.needed.value === null) throw new Error('expected a plan');
    const days = Math.ceil(proof.needed.value / 10_000);
    expect(proof.supplyOn).toBe(addDays(plan.cleanPoint, days - 1));
  });

  it('says why there is none where nothing failed or nothing is built', () => {
    expect(stateProof({ builds, reports: [], maturity: null }, plan, today)).toMatchObject({
      needed: { value: null, reason: 'no_reports' },
      supplyOn: null,
    });
    const stopped = builds.filter(({ day }) => day < addDays(today, -30));
    expect(stateProof({ builds: stopped, reports, maturity: null }, plan, today)).toMatchObject({
      perDay: 0,
      supplyOn: null,
    });
  });
});
