/** What seed/README.md says of the forces, recovered through the analysis. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { ForceDetail, ForceSample } from '#contracts/force.ts';
import { lowLances } from '#seed/scenario/low-lances.ts';
import { wornApplicator } from '#seed/scenario/worn-applicator.ts';
import { createDemoApp, type Demo, daysBefore } from '#tests/support/demo.ts';

let demo: Demo;
beforeAll(async () => {
  demo = await createDemoApp();
}, 240_000);
afterAll(() => demo.close());

test('the worn applicator is the weakest tool of its terminal, misses the pull-out minimum, and its successor holds it', async () => {
  const { plant, tool, successor, terminal, replaced } = wornApplicator;
  const detail = (await demo.ask(`analyses/force/${demo.id(`terminal ${terminal}`)}`, {
    kind: 'pull_out',
    from: daysBefore(replaced + 70),
    to: daysBefore(replaced - 70),
    plant: demo.id(`plant ${plant}`),
  })) as ForceDetail;
  const [weakest] = detail.tools;
  expect(weakest).toMatchObject({ toolCode: tool, meetsMinimum: false });
  expect(detail.tools.find(({ toolCode }) => toolCode === successor)).toMatchObject({ meetsMinimum: true });
  expect(detail.runs!.pFewer).toBeLessThan(0.01);
});

test('samples of the low lances lie below the minimum retention force while the lot was used, and only those', async () => {
  const list = async (from: number, to: number) =>
    (
      await demo.ask('force', {
        kind: 'retention',
        terminal: demo.id(`terminal ${lowLances.terminal}`),
        below: 'true',
        from: daysBefore(from),
        to: daysBefore(to),
      })
    ).items as ForceSample[];
  for (const { plant, from, to } of lowLances.uses)
    expect((await list(from, to - 1)).map(({ plantCode }) => plantCode)).toContain(plant);
  expect(await list(400, 119)).toEqual([]);
});
