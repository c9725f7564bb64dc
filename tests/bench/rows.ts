/** Rows for COPY: reports over two years with skewed plants, parts and tools, a cost item on every third, production every day. */
import { newId } from '#api/platform/ids.ts';
import { causes, causeTaxonomy, costCategories, effects, stageNumber } from '#contracts/taxonomy.ts';
import { type Random, seeded, skewed } from './chance.ts';
import { standardMinor, type World } from './world.ts';

export const days = 728;
const dayMs = 86_400_000;
export const dayBefore = (today: string, back: number) =>
  new Date(Date.parse(today) - back * dayMs).toISOString().slice(0, 10);

type Value = string | number | boolean | null;
/** One line of COPY's text format. The values hold no tab, line break or backslash. */
const line = (values: readonly Value[]) => `${values.map((value) => value ?? '\\N').join('\t')}\n`;

export const reportColumns =
  'id, plant_id, number, reported_at, found_on, built_on, line_id, station, shift, found, source, housing_id, terminal_id, wire_id, tool_id, cavities, reel_lot, housing_lot, customer_id, effect, quantity_found, quantity_inspected, disposition, safety, note, cause, sub_cause, origin, proof, cost_items, booked_minor, standard_minor, gate, gate_minor, gates_passed, voided_at, void_reason';
export const costColumns =
  'id, plant_id, failure_id, category, basis, incurred_on, amount_minor, currency, plant_minor';
export const productionColumns = 'id, plant_id, day, line_id, housing_id, terminal_id, units, terminals';

const words = 'terminal backed out of cavity after lock closed lance bent seal pushed probe mark wire pulled'.split(
  ' ',
);
const pick = <Item>(random: Random, items: readonly Item[]) => items[Math.floor(random() * items.length)]!;

/** Yields a report's line and, for some, its cost item's. Ids rise with the day, as they do in use. */
export function* reports(
  world: World,
  count: number,
  today: string,
): Generator<{ report: string; cost: string | null }> {
  const random = seeded(20_260_601);
  const plantOf = skewed(world.plants.length, 0.7);
  const toolOf = skewed(world.plants[0]!.tools.length, 1);
  const housingOf = skewed(world.housings.length, 0.9);
  const terminalOf = skewed(world.terminals.length, 0.9);
  const causeOf = skewed(causes.length, 0.8);
  for (let i = 0; i < count; i++) {
    const id = newId();
    const plant = world.plants[plantOf(random)]!;
    const day = dayBefore(today, days - Math.floor((i * days) / count));
    const cause = random() < 0.12 ? null : causes[causeOf(random)]!;
    const known = cause ? causeTaxonomy[cause] : null;
    const origin = cause && random() < 0.9 ? stageNumber(known?.usualOrigin ?? 'insertion') : null;
    const found = Math.min(10, (origin ?? 5) + Math.floor(random() ** 2 * 6));
    const quantity = random() < 0.8 ? 1 : 2 + Math.floor(random() ** 3 * 40);
    const hasCost = random() < 1 / 3;
    const booked = hasCost ? Math.round(standardMinor(found) * quantity * Math.exp(random() * 2 - 0.8)) : 0;
    const gate = origin && known?.visibleFrom ? Math.max(origin, stageNumber(known.visibleFrom)) : null;
    const isVoid = random() < 0.005;
    const report = line([
      id,
      plant.id,
      `B-${i}`,
      `${day}T08:00:00Z`,
      day,
      found >= 9 && random() < 0.85 ? dayBefore(day, Math.floor(500 * random() ** 2)) : null,
      pick(random, plant.lines),
      `S${Math.floor(random() * 20)}`,
      pick(random, ['A', 'B', 'C']),
      found,
      found === 10 ? 'field' : found === 9 ? 'customer' : 'line',
      world.housings[housingOf(random)]!,
      world.terminals[terminalOf(random)]!,
      pick(random, world.wires),
      plant.tools[toolOf(random)]!,
      `{A${1 + Math.floor(random() * 12)}}`,
      `R${Math.floor(i / 400)}`,
      `H${Math.floor(i / 900)}`,
      found >= 9 ? pick(random, world.customers) : null,
      pick(random, effects),
      quantity,
      quantity * 20,
      random() < 0.9 ? 'reworked' : random() < 0.5 ? 'scrapped' : 'pending',
      random() < 0.02,
      `${pick(random, words)} ${pick(random, words)} ${pick(random, words)} ${pick(random, words)}`,
      cause,
      known?.subCauses.length ? pick(random, known.subCauses) : null,
      origin,
      random() < 0.3 ? 'seen' : null,
      hasCost ? 1 : 0,
      booked,
      standardMinor(found) * quantity,
      gate,
      gate ? standardMinor(gate) * quantity : null,
      origin === null ? null : Math.max(0, found - origin - 1),
      isVoid ? `${day}T09:00:00Z` : null,
      isVoid ? 'a mistake' : null,
    ]);
    const cost = hasCost
      ? line([newId(), plant.id, id, pick(random, costCategories), 'booked', day, booked, 'EUR', booked])
      : null;
    yield { report, cost };
  }
}

/** Every line builds its own share of the housings, each with one terminal, every day. */
export function* production(world: World, today: string, perLine: number): Generator<string> {
  const random = seeded(7);
  for (let back = days; back >= 1; back--) {
    const day = dayBefore(today, back);
    for (const plant of world.plants)
      for (const [place, lineId] of plant.lines.entries())
        for (let i = 0; i < perLine; i++) {
          const part = place * perLine + i;
          const units = 20 + Math.floor(random() * 200);
          const housing = world.housings[part % world.housings.length]!;
          const terminal = world.terminals[part % world.terminals.length]!;
          yield line([newId(), plant.id, day, lineId, housing, terminal, units, units * 12]);
        }
  }
}
