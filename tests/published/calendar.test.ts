import { describe, expect, it } from 'vitest';
import { isoWeek, weekName } from '#analysis/calendar/week.ts';
import { reference } from './reference.ts';

describe('ISO 8601 weeks', () => {
  const { title, expected } = reference<unknown, Record<string, string>>('13-iso8601-weeks');
  it.each(Object.entries(expected))(`${title}: %s`, (day, text) => {
    expect(`${weekName(day)}-${isoWeek(day).weekday}`).toBe(text);
  });

  // The reference's note counts 71 years of 53 weeks in every 400; 28 December always lies in the last week.
  it(`${title}: 71 long years in 400`, () => {
    const years = Array.from({ length: 400 }, (_, year) => 2000 + year);
    expect(years.filter((year) => isoWeek(`${year}-12-28`).week === 53)).toHaveLength(71);
  });
});
