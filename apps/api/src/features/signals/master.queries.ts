import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { queryRows, sql } from '#db/sql.ts';

const Tool = z.object({ id: z.string(), code: z.string(), kind: z.string() });
const Housing = z.object({ id: z.string(), code: z.string(), cavities: z.number() });
const Terminal = z.object({ id: z.string(), code: z.string() });

/** What the signals need to know of tools, housings and terminals. */
export interface Master {
  tools: Map<string, z.infer<typeof Tool>>;
  housings: Map<string, z.infer<typeof Housing>>;
  terminals: Map<string, z.infer<typeof Terminal>>;
}

export async function readMaster({ db, plants }: Asked): Promise<Master> {
  const [tools, housings, terminals] = await Promise.all([
    queryRows(
      db.pool,
      sql`select t.id, t.code, t.kind from tool t where t.plant_id = any(${plants.map(({ id }) => id)}::uuid[])`,
      Tool,
    ),
    queryRows(
      db.pool,
      sql`select h.id, h.code, h.rows * h.columns - cardinality(h.missing_cavities) as cavities from housing h`,
      Housing,
    ),
    queryRows(db.pool, sql`select t.id, t.code from terminal t`, Terminal),
  ]);
  const byId = <Row extends { id: string }>(rows: Row[]) => new Map(rows.map((row) => [row.id, row]));
  return { tools: byId(tools), housings: byId(housings), terminals: byId(terminals) };
}
