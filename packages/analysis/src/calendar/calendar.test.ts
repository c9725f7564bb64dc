import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, parseDay, type Weekday, weekdayOf } from './day.ts';
import { previousPeriod, weeksEndingWith, weeksOf, yearAgoPeriod } from './period.ts';
import { weekName, weekStart } from './week.ts';

const day = fc.integer({ min: -20_000, max: 20_000 }).map((days) => addDays('2026-01-01', days));
const weekday = fc.integer({ min: 1, max: 7 }) as fc.Arbitrary<Weekday>;

describe('days', () => {
  it('cross months, leap days and years', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    expect(daysBetween('2024-01-01', '2025-01-01')).toBe(366);
  });

  it('refuses what is no day', () => {
    for (const text of ['2026-02-29', '2026-1-1', '20260101', '2026-01-01T00:00:00Z', '20260-01-01', '']) {
      expect(() => parseDay(text), text).toThrow(RangeError);
    }
  });
});

describe('reporting weeks', () => {
  it('start on the plant’s own weekday, at most six days back', () => {
    fc.assert(
      fc.property(day, weekday, (any, first) => {
        const start = weekStart(any, first);
        expect(weekdayOf(start)).toBe(first);
        expect(daysBetween(start, any)).toBeGreaterThanOrEqual(0);
        expect(daysBetween(start, any)).toBeLessThan(7);
      }),
    );
  });

  it('are named by the ISO week that holds most of their days', () => {
    expect(weekName('2026-12-31')).toBe('2026-W53');
    // the week Sunday 2026-12-27 to Saturday 2027-01-02 has six days in 2026-W53
    expect(weekName('2026-12-27', 7)).toBe('2026-W53');
    expect(weekName('2026-12-26', 7)).toBe('2026-W52');
  });
});

describe('periods', () => {
  it('of the last weeks end after the week of the day', () => {
    expect(weeksEndingWith('2026-11-25', 2)).toEqual({ from: '2026-11-16', to: '2026-11-30' });
    expect(weeksEndingWith('2026-11-25', 1, 7)).toEqual({ from: '2026-11-22', to: '2026-11-29' });
  });

  it('have a neighbour of equal length before them and one a year ago on equal weekdays', () => {
    const period = { from: '2026-11-02', to: '2026-11-30' };
    expect(previousPeriod(period)).toEqual({ from: '2026-10-05', to: '2026-11-02' });
    expect(yearAgoPeriod(period)).toEqual({ from: '2025-11-03', to: '2025-12-01' });
    expect(yearAgoPeriod({ from: '2025-01-01', to: '2026-07-01' }).to <= '2025-01-01').toBe(true);
  });

  it('are covered exactly by their weeks', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 1, max: 400 }), weekday, (from, days, first) => {
        const period = { from, to: addDays(from, days) };
        const weeks = weeksOf(period, first);
        expect(weeks[0]!.from).toBe(period.from);
        expect(weeks.at(-1)!.to).toBe(period.to);
        weeks.slice(1).forEach((week, place) => {
          expect(week.from).toBe(weeks[place]!.to);
          expect(weekdayOf(week.from)).toBe(first);
        });
      }),
    );
  });

  it('must end after they start', () => {
    expect(() => previousPeriod({ from: '2026-01-02', to: '2026-01-02' })).toThrow(RangeError);
  });
});
