import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reckonClock } from './reply-clock.ts';
import { addWorkingDays, addWorkingMinutes, type WorkingCalendar, workingMinutesBetween } from './working-time.ts';

const office: WorkingCalendar = {
  zone: 'Europe/Lisbon',
  hours: [1, 2, 3, 4, 5, 6, 7].map((day) =>
    day <= 5
      ? [
          ['08:00', '12:00'],
          ['13:00', '17:00'],
        ]
      : [],
  ),
  holidays: new Set(['2026-06-10']),
};
/** Works around the clock, so that a change of the clocks falls into its time. */
const always = (zone: string): WorkingCalendar => ({
  zone,
  hours: Array.from({ length: 7 }, () => [['00:00', '24:00']] as const),
  holidays: new Set(),
});
const at = (text: string) => new Date(text);

describe('changes of the clocks', () => {
  it('make a day of work an hour shorter in spring and longer in autumn', () => {
    const day = (zone: string, from: string, to: string) => workingMinutesBetween(at(from), at(to), always(zone));
    expect(day('Europe/Berlin', '2026-03-28T23:00Z', '2026-03-29T22:00Z')).toBe(23 * 60);
    expect(day('Europe/Berlin', '2026-10-24T22:00Z', '2026-10-25T23:00Z')).toBe(25 * 60);
    expect(day('America/Chicago', '2026-03-08T06:00Z', '2026-03-09T05:00Z')).toBe(23 * 60);
  });
  it('skip what the wall clock skips: a shift inside the lost hour has no time', () => {
    const night: WorkingCalendar = {
      ...always('Europe/Berlin'),
      hours: Array.from({ length: 7 }, () => [['02:00', '03:00']] as const),
    };
    expect(workingMinutesBetween(at('2026-03-28T23:00Z'), at('2026-03-29T22:00Z'), night)).toBe(0);
    expect(workingMinutesBetween(at('2026-10-24T22:00Z'), at('2026-10-25T23:00Z'), night)).toBeGreaterThanOrEqual(60);
  });
  it('do not move a deadline of whole days off the close of work', () => {
    const berlin = { ...office, zone: 'Europe/Berlin' };
    expect(addWorkingDays(at('2026-03-27T09:00Z'), 1, berlin)).toEqual(at('2026-03-30T15:00Z'));
    expect(addWorkingDays(at('2026-03-26T09:00Z'), 1, berlin)).toEqual(at('2026-03-27T16:00Z'));
  });
});

describe('working time', () => {
  const instant = fc
    .date({ min: at('2025-12-01T00:00Z'), max: at('2027-02-01T00:00Z'), noInvalidDate: true })
    .map((date) => new Date(Math.round(date.getTime() / 60_000) * 60_000));
  const minutes = fc.integer({ min: 0, max: 6000 });
  const shift = fc
    .tuple(fc.integer({ min: 0, max: 22 }), fc.integer({ min: 1, max: 2 }))
    .map(
      ([from, length]) => [`${`${from}`.padStart(2, '0')}:15`, `${`${from + length}`.padStart(2, '0')}:00`] as const,
    );
  const calendar: fc.Arbitrary<WorkingCalendar> = fc.record({
    zone: fc.constantFrom('Europe/Lisbon', 'America/Chicago', 'Asia/Kolkata', 'Australia/Lord_Howe', 'UTC'),
    hours: fc
      .array(fc.option(shift, { nil: null }), { minLength: 7, maxLength: 7 })
      .filter((days) => days.some((day) => day !== null))
      .map((days) => days.map((day) => (day ? [day] : []))),
    holidays: fc
      .array(fc.integer({ min: 0, max: 400 }), { maxLength: 20 })
      .map((days) => new Set(days.map((day) => new Date(Date.UTC(2026, 0, day)).toISOString().slice(0, 10)))),
  });

  it('added and measured again is the same, and adding in two steps is adding at once', () => {
    fc.assert(
      fc.property(instant, minutes, minutes, calendar, (from, first, second, works) => {
        const then = addWorkingMinutes(from, first, works);
        expect(workingMinutesBetween(from, then, works)).toBe(first);
        expect(addWorkingMinutes(then, second, works)).toEqual(
          second === 0 ? then : addWorkingMinutes(from, first + second, works),
        );
      }),
      { numRuns: 60 },
    );
  });
  it('is never negative forwards, and adds up over any instant between', () => {
    fc.assert(
      fc.property(fc.tuple(instant, instant, instant), calendar, (instants, works) => {
        const [a, b, c] = instants.sort((x, y) => +x - +y) as [Date, Date, Date];
        const between = (from: Date, to: Date) => workingMinutesBetween(from, to, works);
        expect(between(a, b)).toBeGreaterThanOrEqual(0);
        expect(between(a, b) + between(b, c)).toBeCloseTo(between(a, c), 6);
        expect(between(c, a)).toBeCloseTo(-between(a, c), 6);
      }),
      { numRuns: 25 },
    );
  });
  it('refuses a calendar that never opens', () => {
    const shut = { ...office, hours: Array.from({ length: 7 }, () => []) };
    expect(() => addWorkingMinutes(at('2026-06-01T00:00Z'), 1, shut)).toThrow(RangeError);
    expect(() => addWorkingDays(at('2026-06-01T00:00Z'), 1, shut)).toThrow(RangeError);
  });

  it('lets a pause of any length leave the working minutes that were left', () => {
    const pause = fc.tuple(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 0, max: 20_000 }));
    fc.assert(
      fc.property(instant, fc.integer({ min: 1, max: 40 }), pause, calendar, (from, hours, [after, long], works) => {
        const length = { amount: hours, unit: 'hours' } as const;
        const plain = reckonClock(length, from, [], works);
        const start = new Date(from.getTime() + after * 60_000);
        const stop = new Date(start.getTime() + long * 60_000);
        const paused = reckonClock(length, from, [{ from: start, to: stop }], works);
        const left = workingMinutesBetween(start, plain.dueAt, works);
        if (left <= 0) expect(paused.dueAt).toEqual(plain.dueAt);
        else expect(workingMinutesBetween(stop, paused.dueAt, works)).toBeCloseTo(left, 6);
        expect(+paused.shortAt).toBeLessThanOrEqual(+paused.urgentAt);
        expect(+paused.urgentAt).toBeLessThanOrEqual(+paused.dueAt);
        expect(+paused.dueAt).toBeGreaterThanOrEqual(+plain.dueAt);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a reply clock', () => {
  // Monday 8 June 2026, 10:00 in Lisbon; Wednesday 10 June is a holiday there.
  const start = at('2026-06-08T09:00Z');
  it('counts working hours across nights, breaks and holidays', () => {
    // 6 h left of Monday, 8 h of Tuesday, the other 2 h on Thursday
    expect(reckonClock({ amount: 16, unit: 'hours' }, start, [], office).dueAt).toEqual(at('2026-06-11T09:00Z'));
  });
  it('ends working days with the work of the last', () => {
    expect(reckonClock({ amount: 2, unit: 'days' }, start, [], office).dueAt).toEqual(at('2026-06-11T16:00Z'));
  });
  it('warns when a quarter and a tenth of the working time are left', () => {
    const { shortAt, urgentAt } = reckonClock({ amount: 20, unit: 'hours' }, start, [], office);
    expect(shortAt).toEqual(at('2026-06-11T08:00Z'));
    expect(urgentAt).toEqual(at('2026-06-11T11:00Z'));
  });
  it('stands still in a pause, over a weekend too', () => {
    const pauses = [{ from: at('2026-06-09T16:00Z'), to: at('2026-06-15T07:00Z') }];
    // 14 h ran before the pause; 2 h remain from Monday 08:00 on
    expect(reckonClock({ amount: 16, unit: 'hours' }, start, pauses, office).dueAt).toEqual(at('2026-06-15T09:00Z'));
  });
});
