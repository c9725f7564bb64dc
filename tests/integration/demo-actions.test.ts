/** The demo's actions: the planted fix that worked is judged so, the one that did not is not. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createDemoApp, type Demo } from '#tests/support/demo.ts';

let demo: Demo;
beforeAll(async () => {
  demo = await createDemoApp();
}, 240_000);
afterAll(() => demo.close());

const effectOf = async (q: string) => {
  const { items } = await demo.ask('actions', { q });
  expect(items).toHaveLength(1);
  return { action: items[0], effect: (await demo.ask(`actions/${items[0].id}/effect`, {})).effect };
};

test('the pull check held, with its proof stated beforehand', async () => {
  const { action, effect } = await effectOf('Push-click-pull check at every');
  expect(action).toMatchObject({ state: 'verified', effect: { verdict: 'held' } });
  expect(effect).toMatchObject({ verdict: 'held', excludedOn: null, fewerThanPlanned: false });
  expect(effect.planned.statedOn < effect.plan.cleanPoint).toBe(true);
  expect(effect.ratio.overAllLooks.high).toBeLessThan(1);
});

test('moving the tie did not hold, and the action is open again', async () => {
  const { action, effect } = await effectOf('um 20 mm versetzt');
  expect(action).toMatchObject({ state: 'under_way', reopened: 1, effect: { verdict: 'did_not_hold' } });
  expect(effect.ratio.interval.high).toBeGreaterThan(0.7);
});

test('about forty others of every state and kind, owned by the demo accounts', async () => {
  const { items } = await demo.ask('actions', { limit: 200 });
  expect(items.length).toBeGreaterThan(40);
  const seen = (of: (row: { state: string; kind: string }) => string) => new Set(items.map(of)).size;
  expect(seen(({ state }) => state)).toBe(6);
  expect(seen(({ kind }) => kind)).toBe(4);
  const count = await demo.ask('actions/count', {});
  expect(count.overdue).toBeGreaterThan(3);
});
