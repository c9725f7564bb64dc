import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import {
  addWorkingDays,
  addWorkingMinutes,
  type WorkingCalendar,
  workingMinutesBetween,
} from '#analysis/calendar/working-time.ts';
import { reference } from './reference.ts';

type Given = { hours: [string, string][]; holidays: string[]; workdays: string };
type Case = { start: string; hours: number; days: number };

const zones = ['Europe/Berlin', 'America/Chicago', 'Asia/Shanghai'];
const calendarOf = ({ hours, holidays, workdays }: Given, zone: string): WorkingCalendar => ({
  zone,
  hours: [...workdays].map((works) => (works === '1' ? hours : [])),
  holidays: new Set(holidays),
});
const wall = (at: Date, zone: string) => DateTime.fromJSDate(at, { zone }).toFormat("yyyy-MM-dd'T'HH:mm");

describe.each([
  ['working-hours', (at: Date, { hours }: Case, of: WorkingCalendar) => addWorkingMinutes(at, hours * 60, of)],
  ['working-days', (at: Date, { days }: Case, of: WorkingCalendar) => addWorkingDays(at, days, of)],
] as const)('%s', (id, due) => {
  const { title, input, cases } = reference<Given, string>(id);
  it.each(zones)(`${title}: in %s`, (zone) => {
    const calendar = calendarOf(input, zone);
    expect(cases.length).toBeGreaterThan(50);
    for (const { input: given, expected } of cases as unknown as { input: Case; expected: string }[]) {
      const at = DateTime.fromISO(given.start, { zone }).toJSDate();
      const ours = due(at, given, calendar);
      // pandas names the next opening where ours names the close of work: no working time lies between the two
      if (id === 'working-days') expect(wall(ours, zone), JSON.stringify(given)).toBe(expected);
      const there = DateTime.fromISO(expected, { zone }).toJSDate();
      expect(workingMinutesBetween(ours, there, calendar), JSON.stringify(given)).toBe(0);
    }
  });
});
