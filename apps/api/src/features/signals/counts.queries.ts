import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { filterWhere } from '#api/platform/filter.ts';
import { queryRows, sql } from '#db/sql.ts';

/** The sets that reports are counted by, in one pass. */
const sets = {
  plant: 0b0111_1111,
  housing: 0b0011_1111,
  terminal: 0b0101_1111,
  lot: 0b1111_0111,
  housingLot: 0b1111_1011,
  fixturePosition: 0b0110_1101,
  cavity: 0b1011_1110,
} as const;
export type CountedSet = keyof typeof sets;
const nameOf = new Map<number, CountedSet>(Object.entries(sets).map(([name, bits]) => [bits, name as CountedSet]));

const Row = z.object({
  bits: z.number(),
  plant_id: z.string().nullable(),
  housing_id: z.string().nullable(),
  terminal_id: z.string().nullable(),
  tool_id: z.string().nullable(),
  reel_lot: z.string().nullable(),
  housing_lot: z.string().nullable(),
  fixture_position: z.string().nullable(),
  cavity: z.string().nullable(),
  of_part: z.string().nullable(),
  reports: z.number(),
});
export type Counted = z.infer<typeof Row>;

/**
 * Reports of the period by plant, by what a plant's reports name, and by lots and cavities over all plants asked about.
 * `of_part`: the terminal of a reel lot, the housing of a housing lot.
 */
export async function countSets({ db, filter, scope }: Asked): Promise<Record<CountedSet, Counted[]>> {
  const rows = await queryRows(
    db.pool,
    sql`select grouping(f.plant_id, f.housing_id, f.terminal_id, f.tool_id, f.reel_lot, f.housing_lot, f.fixture_position, f.cavity) as bits,
        f.plant_id, f.housing_id, f.terminal_id, f.tool_id, f.reel_lot, f.housing_lot, f.fixture_position, f.cavity,
        case when grouping(f.reel_lot) = 0 then any_value(f.terminal_id) when grouping(f.housing_lot) = 0 then any_value(f.housing_id) end as of_part,
        count(*)::int as reports
      from failure_fact f where ${filterWhere(filter, scope)}
      group by grouping sets ((f.plant_id), (f.plant_id, f.housing_id), (f.plant_id, f.terminal_id), (f.reel_lot),
        (f.housing_lot), (f.plant_id, f.tool_id, f.fixture_position), (f.housing_id, f.cavity))`,
    Row,
  );
  const bySet = Map.groupBy(rows, ({ bits }) => nameOf.get(bits)!);
  return Object.fromEntries(Object.keys(sets).map((name) => [name, bySet.get(name as CountedSet) ?? []])) as Record<
    CountedSet,
    Counted[]
  >;
}
