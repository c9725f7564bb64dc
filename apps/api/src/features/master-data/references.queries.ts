/** What refers to master data: reasons why a row must stay as it is, and the reports that follow a change. */
import { z } from 'zod';
import { refreshFigures } from '#api/features/failures/figures.ts';
import type { Tx } from '#db/client.ts';
import { sql, txOne, txRows } from '#db/sql.ts';

const Yes = z.object({ yes: z.boolean() });

export async function plantHasMoney(tx: Tx, plantId: string): Promise<boolean> {
  const row = await txOne(
    tx,
    sql`select exists (select from cost_item c where c.plant_id = ${plantId}::uuid)
      or exists (select from cost_rate r where r.plant_id = ${plantId}::uuid)
      or exists (select from standard_cost s where s.plant_id = ${plantId}::uuid) as yes`,
    Yes,
  );
  return row?.yes ?? false;
}

export async function isStageReported(tx: Tx, plantId: string, stageId: string): Promise<boolean> {
  const row = await txOne(
    tx,
    sql`select exists (select from failure f where f.plant_id = ${plantId}::uuid and f.stage_id = ${stageId}::uuid) as yes`,
    Yes,
  );
  return row?.yes ?? false;
}

/** Which of the cavities some report of the housing names. */
export async function reportedCavities(tx: Tx, housingId: string, cavities: readonly string[]): Promise<string[]> {
  if (cavities.length === 0) return [];
  const rows = await txRows(
    tx,
    sql`select distinct named.cavity from failure f, unnest(f.cavities) as named (cavity)
      where f.housing_id = ${housingId}::uuid and f.cavities && ${cavities}::text[] and named.cavity = any (${cavities}::text[])
      order by named.cavity`,
    z.object({ cavity: z.string() }),
  );
  return rows.map(({ cavity }) => cavity);
}

/** The figures of a plant's reports that a changed stage or standard cost moves; with `from`, those found on that day or later. */
export async function refreshPlantFigures(tx: Tx, plantId: string, from = '-infinity'): Promise<void> {
  await refreshFigures(tx, sql`f.plant_id = ${plantId}::uuid and f.found_on >= ${from}::date`);
}
