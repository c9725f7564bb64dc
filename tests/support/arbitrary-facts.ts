/** Arbitrary reports and production over a small world of plants and parts, so that they meet often. */
import fc from 'fast-check';
import { newId } from '#api/platform/ids.ts';
import { causes, causeTaxonomy, costCategories, dispositions, effects, sources } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import type { ProductionFact, ReportFact } from './facts.ts';
import * as make from './master-data.ts';

/** A world's days: nine weeks from a Wednesday, so that periods have ragged ends. */
export const firstDay = '2026-01-07';
export const dayAfter = (days: number) => new Date(Date.parse(firstDay) + days * 86_400_000).toISOString().slice(0, 10);
const dayNumber = fc.integer({ min: 0, max: 62 });

/** Marks as people write them: with commas, signs of an address, the words of the filter, other scripts. */
export const marks = ['A1', 'none', 'several', 'a,b', 'x=1&y=2', '7 %', 'ü/端子', 'cause:none'];
const mark = fc.option(fc.constantFrom(...marks), { nil: null });

export interface World {
  plants: { id: string; currency: string; lines: string[]; tools: string[] }[];
  housings: string[];
  terminals: string[];
  wires: string[];
  customers: string[];
}

const ids = async (count: number, one: () => Promise<{ id: string }>) => {
  const made: string[] = [];
  for (let i = 0; i < count; i++) made.push((await one()).id);
  return made;
};

/** Three plants in three currencies, one of which has no exchange rate to the group's. */
export async function makeWorld(db: Database): Promise<World> {
  const plants: World['plants'] = [];
  for (const [currency, zone, weekStart] of [
    ['EUR', 'Europe/Lisbon', 1],
    ['JPY', 'Asia/Tokyo', 7],
    ['TND', 'Africa/Tunis', 6],
  ] as const) {
    const { id } = await make.makePlant(db, { currency, zone, weekStart });
    await make.makeStages(db, id);
    for (const disposition of ['reworked', 'scrapped'] as const)
      for (const stage of [2, 5, 6, 10]) await make.makeStandardCost(db, id, stage, disposition, stage * 33);
    const lines = await ids(2, () => make.makeLine(db, id));
    plants.push({ id, currency, lines, tools: await ids(2, () => make.makeTool(db, id)) });
  }
  await make.makeExchangeRate(db, 'EUR', 'JPY', '163.7');
  return {
    plants,
    housings: await ids(3, () => make.makeHousing(db)),
    terminals: await ids(2, () => make.makeTerminal(db)),
    wires: await ids(2, () => make.makeWire(db)),
    customers: await ids(2, () => make.makeCustomer(db)),
  };
}

const orNull = <Value>(of: readonly Value[]) => fc.option(fc.constantFrom(...of), { nil: null });

const cost = fc.record({
  category: fc.constantFrom(...costCategories),
  basis: fc.constantFrom('booked' as const, 'estimated' as const),
  minor: fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 1, max: 90_001 }) }, fc.integer({ min: -500, max: 0 })),
});

export const reportFact = (world: World): fc.Arbitrary<ReportFact> =>
  fc.constantFrom(...world.plants).chain((plant) =>
    fc
      .record({
        id: fc.constant(null).map(newId),
        plantId: fc.constant(plant.id),
        foundOn: dayNumber.map(dayAfter),
        lineId: orNull(plant.lines),
        toolId: orNull(plant.tools),
        housingId: orNull(world.housings),
        terminalId: orNull(world.terminals),
        wireId: orNull(world.wires),
        customerId: orNull(world.customers),
        station: mark,
        shift: mark,
        reelLot: mark,
        housingLot: mark,
        cavities: fc.subarray(['A1', 'A2', 'B1'], { maxLength: 2 }),
        source: fc.constantFrom(...sources),
        effect: orNull(effects),
        disposition: fc.constantFrom(...dispositions),
        cause: orNull(causes),
        stages: fc.tuple(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 10 }), fc.boolean()),
        quantityFound: fc.oneof(fc.constant(1), fc.integer({ min: 2, max: 40 })),
        safety: fc.boolean(),
        proof: fc.option(fc.constant('seen'), { nil: null }),
        costs: fc.array(cost, { maxLength: 3 }),
        isVoid: fc.nat(9).map((it) => it === 0),
        subCauseAt: fc.option(fc.nat(6), { nil: null }),
      })
      .map(({ stages: [a, b, hasOrigin], isVoid, subCauseAt, ...fact }) => ({
        ...fact,
        origin: hasOrigin ? Math.min(a, b) : null,
        found: Math.max(a, b),
        subCause: fact.cause && subCauseAt !== null ? (causeTaxonomy[fact.cause].subCauses[subCauseAt] ?? null) : null,
        ...(isVoid && { voidedAt: new Date('2026-04-01'), voidReason: 'a mistake' }),
      })),
  );

export const productionFacts = (world: World): fc.Arbitrary<ProductionFact[]> =>
  fc.uniqueArray(
    fc.constantFrom(...world.plants).chain((plant) =>
      fc.record({
        plantId: fc.constant(plant.id),
        day: dayNumber.map(dayAfter),
        lineId: orNull(plant.lines),
        housingId: orNull(world.housings),
        terminalId: orNull(world.terminals),
        units: fc.integer({ min: 0, max: 500 }),
        terminals: fc.integer({ min: 0, max: 9000 }),
      }),
    ),
    { maxLength: 25, selector: (row) => [row.plantId, row.day, row.lineId, row.housingId, row.terminalId].join() },
  );
