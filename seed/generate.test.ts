import { expect, test } from 'vitest';
import { dayNumber, easterSunday, isLunarNewYear, isoDay } from './calendar.ts';
import { checksumOf, generateDemo } from './generate.ts';
import { anchorDay } from './load.ts';
import { makeWorld } from './world.ts';

const demo = (anchor: string, seed = 1) => generateDemo({ anchor, seed, passwordHash: '-' });
const countOf = ({ tables }: ReturnType<typeof demo>, name: string) =>
  tables.find((it) => it.name === name)!.rows.length;

test('the same seed and last day give the same rows', () => {
  expect(checksumOf(demo('2026-06-14'))).toBe(checksumOf(demo('2026-06-14')));
}, 240_000);

test('another seed and a leap day give other rows of about the same number', () => {
  const made = demo('2028-02-29', 2);
  expect(Math.abs(countOf(made, 'failure') - 20_000)).toBeLessThan(1_500);
  expect(countOf(made, 'production')).toBeGreaterThan(30_000);
  expect(makeWorld(2, 20_000).id('plant LEJ')).not.toBe(makeWorld(1, 20_000).id('plant LEJ'));
}, 240_000);

test('nothing lies in anybody’s future: the last day is yesterday where the day begins last', () => {
  expect(anchorDay(new Date('2026-06-15T18:00:00Z'))).toBe('2026-06-14');
  expect(anchorDay(new Date('2026-06-15T02:00:00Z'))).toBe('2026-06-13');
});

/** Dates as printed in common calendars, from memory. */
test('moving holidays', () => {
  expect([2024, 2025, 2026, 2027].map((year) => isoDay(easterSunday(year)))).toEqual([
    '2024-03-31',
    '2025-04-20',
    '2026-04-05',
    '2027-03-28',
  ]);
  const newYears = ['2024-02-10', '2025-01-29', '2026-02-17'];
  for (const day of newYears) {
    expect(isLunarNewYear(dayNumber(day))).toBe(true);
    expect(isLunarNewYear(dayNumber(day) - 1)).toBe(false);
  }
});
