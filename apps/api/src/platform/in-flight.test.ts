import { expect, test } from 'vitest';
import { inFlight } from './in-flight.ts';

test('the same question is asked once while it is under way, and anew afterwards', async () => {
  const share = inFlight<number>();
  let asked = 0;
  const ask = async () => ++asked;
  expect(await Promise.all([share('a', ask), share('a', ask), share('b', ask)])).toEqual([1, 1, 2]);
  expect(await share('a', ask)).toBe(3);
});

test('a failure is shared and forgotten', async () => {
  const share = inFlight<number>();
  const fail = () => Promise.reject(new Error('down'));
  const both = await Promise.allSettled([share('a', fail), share('a', fail)]);
  expect(both.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
  expect(await share('a', async () => 1)).toBe(1);
});
