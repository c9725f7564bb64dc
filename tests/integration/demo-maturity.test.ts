/** The demo's field reports come with their delay, and the planted truths show in maturity, gates and what-if. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Gates } from '#contracts/gates.ts';
import type { Maturity } from '#contracts/maturity.ts';
import type { WhatIf } from '#contracts/what-if.ts';
import { createDemoApp, type Demo, daysBefore } from '#tests/support/demo.ts';

let demo: Demo;
beforeAll(async () => {
  demo = await createDemoApp();
}, 240_000);
afterAll(() => demo.close());

test('old build months are nearly whole, young ones are not, and what is to come is much', async () => {
  const maturity: Maturity = await demo.ask('analyses/maturity', {});
  const { rows, reportedByAge } = maturity;
  expect(rows.length).toBeGreaterThanOrEqual(16);
  expect(reportedByAge).toEqual(reportedByAge.toSorted((a, b) => a - b));
  expect(reportedByAge[1]).toBeLessThan(0.6);
  expect(reportedByAge[9]).toBeGreaterThan(0.75);
  expect(rows.filter(({ mature }) => mature).length).toBeGreaterThan(6);
  expect(rows.at(-1)!.mature).toBe(false);
  const undated = maturity.leftOut.find(({ reason }) => reason === 'no_build_date')!.reports;
  expect(undated / (undated + maturity.reports)).toBeGreaterThan(0.1);
  expect(undated / (undated + maturity.reports)).toBeLessThan(0.25);
});

test('the forecast made six months ago holds what came about since', async () => {
  const horizon = 6;
  const query = { plant: demo.id('plant LEJ'), months: 18 };
  const then: Maturity = await demo.ask('analyses/maturity', { ...query, to: '2025-12-01', horizon });
  const now: Maturity = await demo.ask('analyses/maturity', query);
  const at = (maturity: Maturity, last: string) =>
    maturity.rows
      .filter(({ month }) => month <= '2025-11' && month >= then.recordsFrom)
      .reduce((sum, { cumulative, month }) => sum + cumulative[monthsTo(month, last)]!, 0);
  const came = at(now, '2026-05') - at(now, '2025-11');
  const { low, high } = then.forecast.total.interval!;
  expect(came).toBeGreaterThanOrEqual(low * 0.7);
  expect(came).toBeLessThanOrEqual(high! * 1.5);
});
const monthsTo = (from: string, to: string) =>
  (Number(to.slice(0, 4)) - Number(from.slice(0, 4))) * 12 + Number(to.slice(5)) - Number(from.slice(5));

test('the glued fortnight stands out among its plant’s build months', async () => {
  const { rows }: Maturity = await demo.ask('analyses/maturity', {
    plant: demo.id('plant TOL'),
    cause: 'adhesive',
  });
  const built = [daysBefore(262).slice(0, 7), daysBefore(250).slice(0, 7)];
  const [worst] = rows.toSorted((a, b) => (b.cumulative.at(-1) ?? 0) - (a.cumulative.at(-1) ?? 0));
  expect(built).toContain(worst!.month);
});

test('the last tests find about what was planted, and are worth most', async () => {
  const gates: Gates = await demo.ask('analyses/gates', { from: daysBefore(363), to: '2026-06-01' });
  const share = (stage: string) => gates.gates.find((gate) => gate.stage === stage)!;
  // Chances planted per cause lie from 0.4 to 0.8 at the electrical test, 0.35 to 0.75 at the product test.
  expect(share('electrical_test').matured.value).toBeGreaterThan(0.35);
  expect(share('electrical_test').matured.value).toBeLessThan(0.65);
  expect(share('product_test').matured.value).toBeGreaterThan(0.4);
  expect(share('product_test').matured.value).toBeLessThan(0.75);
  expect(share('warehouse').matured.value).toBeLessThan(0.3);
  expect(gates.maturity.reported).toBeGreaterThan(0.4);
  expect(gates.next.candidates).toContain('product_test');
});

test('two plants have a scenario, computed from their own reports', async () => {
  const { items } = await demo.ask('what-if', {});
  expect(items.map(({ plantCode }: WhatIf) => plantCode).sort()).toEqual(['LEJ', 'QRO']);
  for (const { id } of items) {
    const { result, query }: WhatIf = await demo.ask(`what-if/${id}`, {});
    for (const { cause, reports } of result.costs)
      expect((await demo.viewer.get(`/api/v1/failures/count?${query}&cause=${cause}`)).body.reports).toBe(reports);
    expect(result.together.savingPerYear.value).toBeGreaterThan(0);
  }
});
