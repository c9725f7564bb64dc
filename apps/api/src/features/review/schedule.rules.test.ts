import { expect, test } from 'vitest';
import { dueWeek, dueWeekOfGroup, isOver } from './schedule.rules.ts';

const at = (text: string) => new Date(text);
const lisbon = { zone: 'Europe/Lisbon', weekStart: 1 };

// Offsets of Europe/Lisbon (UTC+1 from 29 March to 25 October 2026, else UTC) by the IANA time zone database.
test.each([
  ['2026-03-23T05:59:59Z', '2026-03-09'],
  ['2026-03-23T06:00:00Z', '2026-03-16'],
  ['2026-03-30T04:59:59Z', '2026-03-16'],
  ['2026-03-30T05:00:00Z', '2026-03-23'],
  ['2026-10-26T05:59:59Z', '2026-10-12'],
  ['2026-10-26T06:00:00Z', '2026-10-19'],
])('at %s in Lisbon the newest week due begins on %s', (now, from) => {
  expect(dueWeek(at(now), lisbon).from).toBe(from);
});

test('six o’clock of the plant, on the first day of the plant’s own week', () => {
  // Shanghai is 8 hours ahead, Chihuahua 6 behind (IANA time zone database).
  expect(dueWeek(at('2026-06-14T22:00:00Z'), { zone: 'Asia/Shanghai', weekStart: 1 }).from).toBe('2026-06-08');
  expect(dueWeek(at('2026-06-14T21:59:59Z'), { zone: 'Asia/Shanghai', weekStart: 1 }).from).toBe('2026-06-01');
  expect(dueWeek(at('2026-06-15T12:00:00Z'), { zone: 'America/Chihuahua', weekStart: 1 }).from).toBe('2026-06-08');
  expect(dueWeek(at('2026-06-15T11:59:59Z'), { zone: 'America/Chihuahua', weekStart: 1 }).from).toBe('2026-06-01');
  // A week that begins on Sunday is due on Sunday.
  expect(dueWeek(at('2026-06-14T12:00:00Z'), { zone: 'America/Chihuahua', weekStart: 7 })).toEqual({
    from: '2026-06-07',
    to: '2026-06-14',
  });
});

test('six by the wall clock on the very day the clocks change', () => {
  // A week that begins on Sunday 29 March 2026, when 01:00 becomes 02:00 in Lisbon: 06:00 there is 05:00 UTC.
  const sunday = { zone: 'Europe/Lisbon', weekStart: 7 };
  expect(dueWeek(at('2026-03-29T04:59:59Z'), sunday).from).toBe('2026-03-15');
  expect(dueWeek(at('2026-03-29T05:00:00Z'), sunday).from).toBe('2026-03-22');
});

test('the group waits until the week is over everywhere', () => {
  const shanghai = { zone: 'Asia/Shanghai', weekStart: 1 };
  const chihuahua = { zone: 'America/Chihuahua', weekStart: 1 };
  const losAngeles = { zone: 'America/Los_Angeles', weekStart: 7 };
  expect(dueWeekOfGroup(at('2026-06-15T05:59:59Z'), [shanghai, chihuahua]).from).toBe('2026-06-01');
  expect(dueWeekOfGroup(at('2026-06-15T06:00:00Z'), [shanghai, chihuahua]).from).toBe('2026-06-08');
  // In Los Angeles Sunday ends at 07:00 UTC in summer.
  expect(dueWeekOfGroup(at('2026-06-15T06:30:00Z'), [shanghai, losAngeles]).from).toBe('2026-06-01');
  expect(dueWeekOfGroup(at('2026-06-15T07:00:00Z'), [shanghai, losAngeles]).from).toBe('2026-06-08');
});

test('late is as good as in time: on any later day of the week the same week is due', () => {
  for (const now of ['2026-06-15T05:00:00Z', '2026-06-17T12:00:00Z', '2026-06-21T23:00:00Z'])
    expect(dueWeek(at(now), lisbon).from).toBe('2026-06-08');
});

test('a week is over when its last day has ended at the last plant', () => {
  const week = { from: '2026-06-08', to: '2026-06-15' };
  const places = [lisbon, { zone: 'America/Chihuahua', weekStart: 1 }];
  expect(isOver(week, at('2026-06-15T05:59:59Z'), places)).toBe(false);
  expect(isOver(week, at('2026-06-15T06:00:00Z'), places)).toBe(true);
});
