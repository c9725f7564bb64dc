import { z } from 'zod';
import type { PartContent } from '#contracts/case-parts.ts';
import type { Tx } from '#db/client.ts';
import { sql, txRows } from '#db/sql.ts';

const Asked = z.object({ plantId: z.string(), why: z.array(z.string()) });

/** Which other plants have a tool of the type, have built or reported the part, or may have the practice; with the reasons. */
export const plantsAsked = (
  tx: Tx,
  ownPlantId: string,
  { toolTypes, housingIds, terminalIds, practice }: PartContent<'reach'>,
) =>
  txRows(
    tx,
    sql`select p.id as "plantId", array_remove(array[
        case when exists (select from tool t where t.plant_id = p.id and t.retired_at is null and t.type = any(${toolTypes}::text[])) then 'tool_type' end,
        case when exists (select from production d where d.plant_id = p.id and d.housing_id = any(${housingIds}::uuid[]))
          or exists (select from failure f where f.plant_id = p.id and f.housing_id = any(${housingIds}::uuid[])) then 'housing' end,
        case when exists (select from production d where d.plant_id = p.id and d.terminal_id = any(${terminalIds}::uuid[]))
          or exists (select from failure f where f.plant_id = p.id and f.terminal_id = any(${terminalIds}::uuid[])) then 'terminal' end,
        case when ${practice !== ''} then 'practice' end
      ], null) as why
      from plant p where p.id <> ${ownPlantId}::uuid and p.retired_at is null order by p.code`,
    Asked,
  ).then((plants) => plants.filter(({ why }) => why.length > 0));
