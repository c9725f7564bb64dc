import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { Day } from '#contracts/shared/scalars.ts';
import { ForceKind } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import { queryRows, sql } from '#db/sql.ts';
import { minimumN, type Narrowed, narrow } from './force.queries.ts';

export const MeasuredRow = z.object({
  id: z.string(),
  kind: ForceKind,
  day: Day,
  terminalId: z.string(),
  terminalCode: z.string(),
  plantCode: z.string(),
  toolId: z.string().nullable(),
  toolCode: z.string().nullable(),
  reference: z.string().nullable(),
  newtons: z.array(z.number()),
  minimumN: z.number().nullable(),
});
export type MeasuredRow = z.output<typeof MeasuredRow>;

/** The samples asked about, in order of time. */
export const readMeasured = (db: Database, scope: PlantScope, asked: Narrowed): Promise<MeasuredRow[]> =>
  queryRows(
    db.pool,
    sql`select s.id, s.kind, s.day::text as day, s.terminal_id as "terminalId", t.code as "terminalCode", p.code as "plantCode",
        s.tool_id as "toolId", o.code as "toolCode", s.reference, s.newtons, ${minimumN} as "minimumN"
      from force_sample s join terminal t on t.id = s.terminal_id join plant p on p.id = s.plant_id left join tool o on o.id = s.tool_id
      where ${narrow(scope, asked)} order by s.day, s.id`,
    MeasuredRow,
  );
