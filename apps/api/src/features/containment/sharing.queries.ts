import { z } from 'zod';
import { sharedThings } from '#contracts/containment-parts.ts';
import type { Tx } from '#db/client.ts';
import { sql, txRows } from '#db/sql.ts';
import type { Scope } from './population.queries.ts';

const Shared = z.object({ plantId: z.string(), shares: z.array(z.enum(sharedThings)) });
export type Shared = z.infer<typeof Shared>;

/**
 * Other plants that share what is suspect: the lot (in a report since the first day built), a tool of the same type, or the
 * part (built there in the same days).
 */
export const plantsSharing = (tx: Tx, it: Scope): Promise<Shared[]> =>
  txRows(
    tx,
    sql`select x.id as "plantId", array_remove(array[case when x.lot then 'lot' end, case when x.tool then 'tool' end,
        case when x.part then 'part' end], null) as shares
      from (select q.id,
          exists (select from failure f where f.plant_id = q.id and f.found_on >= ${it.builtFrom}::date and f.voided_at is null
            and (f.reel_lot = any(${it.reelLots}::text[]) or f.housing_lot = any(${it.housingLots}::text[]))) as lot,
          exists (select from tool t where t.plant_id = q.id and t.retired_at is null and t.type in (
            select s.type from tool s where s.id = any(${it.toolIds}::uuid[]) and s.type is not null)) as tool,
          exists (select from production d where d.plant_id = q.id and d.day >= ${it.builtFrom}::date and d.day < ${it.builtTo}::date
            and (d.housing_id = any(${it.housingIds}::uuid[]) or d.terminal_id = any(${it.terminalIds}::uuid[]))) as part
        from plant q where q.id <> ${it.plantId}::uuid and q.retired_at is null) x
      where x.lot or x.tool or x.part order by x.id`,
    Shared,
  );
