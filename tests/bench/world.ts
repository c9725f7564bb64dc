/** The master data of the bench: twelve plants in four currencies, their lines and tools, common parts. */
import { newId } from '#api/platform/ids.ts';
import { dispositions, stages } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';

export interface Plant {
  id: string;
  lines: string[];
  tools: string[];
}
export interface World {
  plants: Plant[];
  housings: string[];
  terminals: string[];
  wires: string[];
  customers: string[];
}
/** What a terminal costs where it is found, in minor units. */
export const standardMinor = (stage: number) => 20 * 2 ** stage;

const many = (count: number) => Array.from({ length: count }, newId);
const currencies = ['EUR', 'USD', 'MXN', 'CNY'];

export async function makeWorld({ prisma }: Database): Promise<World> {
  const world: World = {
    plants: many(12).map((id) => ({ id, lines: many(6), tools: many(60) })),
    housings: many(400),
    terminals: many(120),
    wires: many(60),
    customers: many(25),
  };
  const named = (prefix: string) => (id: string, place: number) => ({
    id,
    code: `${prefix}-${place + 1}`,
    name: `${prefix} ${place + 1}`,
  });
  await prisma.plant.createMany({
    data: world.plants.map(({ id }, place) => ({
      ...named('P')(id, place),
      zone: 'Europe/Lisbon',
      currency: currencies[place % 4]!,
    })),
  });
  for (const [plantId, { lines, tools }] of world.plants.map((plant) => [plant.id, plant] as const)) {
    await prisma.line.createMany({ data: lines.map((id, place) => ({ ...named('L')(id, place), plantId })) });
    await prisma.tool.createMany({
      data: tools.map((id, place) => ({ ...named('T')(id, place), plantId, kind: 'applicator' as const })),
    });
    await prisma.stage.createMany({
      data: stages.map((name, place) => ({
        id: newId(),
        plantId,
        code: name,
        name,
        common: place + 1,
        position: place + 1,
      })),
    });
    await prisma.standardCost.createMany({
      data: stages.flatMap((_, place) =>
        dispositions.map((disposition) => ({
          id: newId(),
          plantId,
          stage: place + 1,
          disposition,
          validFrom: new Date('2015-01-01'),
          terminalMinor: standardMinor(place + 1),
        })),
      ),
    });
  }
  await prisma.housing.createMany({
    data: world.housings.map((id, place) => ({
      ...named('H')(id, place),
      rows: 4,
      columns: 12,
      retentionStyle: 'terminal_lance' as const,
      secondaryLock: 'separate' as const,
    })),
  });
  await prisma.terminal.createMany({
    data: world.terminals.map((id, place) => ({ ...named('C')(id, place), wireMinMm2: 0.35, wireMaxMm2: 2.5 })),
  });
  await prisma.wire.createMany({
    data: world.wires.map((id, place) => ({ ...named('W')(id, place), sectionMm2: 0.5 })),
  });
  await prisma.customer.createMany({ data: world.customers.map(named('K')) });
  await prisma.exchangeRate.createMany({
    data: [
      ['USD', 0.92],
      ['MXN', 0.05],
      ['CNY', 0.13],
    ].map(([base, rate]) => ({
      id: newId(),
      base: String(base),
      quote: 'EUR',
      validFrom: new Date('2015-01-01'),
      rate: Number(rate),
    })),
  });
  return world;
}
