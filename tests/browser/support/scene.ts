/** A small scene with known counts: one plant, thirteen weeks, 24 reports. */
import type { TestApp } from '#tests/support/app.ts';
import { addProduction, addReports, type ReportFact } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

/** Wednesday; the last full week is 8 to 14 June 2026, the usual period 16 March to 14 June. */
export const now = '2026-06-17T10:00:00Z';

const times = (count: number, fact: ReportFact): ReportFact[] => Array.from({ length: count }, () => ({ ...fact }));

export async function setScene(it: TestApp): Promise<{ plant: string; housing: string }> {
  const plant = (await make.makePlant(it.db, { code: 'LIS', name: 'Lisbon works', currency: 'EUR' })).id;
  await make.makeStages(it.db, plant);
  const housing = (await make.makeHousing(it.db, { code: 'HSG-A', name: 'Housing A' })).id;
  const base = { plantId: plant, housingId: housing, foundOn: '2026-06-10' };
  await addReports(it.db, [
    // 12 made at the crimp and found at the electrical test: three gates between.
    ...times(12, { ...base, cause: 'tooling', origin: 2, found: 6, quantityFound: 2, costs: [{ minor: 900 }] }),
    // 6 made at insertion, found at the lock check.
    ...times(6, { ...base, cause: 'partial_seat', origin: 4, found: 5 }),
    // 3 made at insertion, found in the field; booked and estimated.
    ...times(3, {
      ...base,
      cause: 'partial_seat',
      origin: 4,
      found: 10,
      source: 'field',
      costs: [{ minor: 40_000 }, { minor: 12_500, basis: 'estimated', category: 'warranty' }],
    }),
    // 2 without a cause in the week before.
    ...times(2, { ...base, foundOn: '2026-06-03', found: 6 }),
    // 1 safety-relevant, from a customer, without a cause.
    { ...base, source: 'customer', found: 9, safety: true },
  ]);
  await addProduction(it.db, [
    { plantId: plant, day: '2026-06-10', units: 1000, terminals: 20_000 },
    { plantId: plant, day: '2026-06-03', units: 1000, terminals: 20_000 },
  ]);
  return { plant, housing };
}
