import { z } from 'zod';
import { unknownReference } from '#api/platform/problems.ts';
import type { ContainmentInput } from '#contracts/containment.ts';
import { allows, roles } from '#contracts/permissions.ts';
import type { Tx } from '#db/client.ts';
import { sql, txOne } from '#db/sql.ts';

const Facts = z.object({
  plantCode: z.string(),
  today: z.string(),
  year: z.int(),
  housings: z.int(),
  terminals: z.int(),
  lines: z.int(),
  tools: z.int(),
  complaint: z.boolean(),
  case: z.boolean(),
  owner: z.boolean(),
});
type Facts = z.infer<typeof Facts>;

const owners = roles.filter((role) => allows('containment.write', role));
const distinct = (ids: readonly string[]) => [...new Set(ids)];

/**
 * Everything a containment names, checked in one question; retired parts may be suspect too.
 * @throws `unknown_reference` with the field's path
 */
export async function checkReferences(tx: Tx, it: ContainmentInput & { ownerId: string }, at: Date): Promise<Facts> {
  const facts = await txOne(
    tx,
    sql`select p.code as "plantCode", (${at}::timestamptz at time zone p.zone)::date::text as today,
        extract(year from ${at}::timestamptz at time zone p.zone)::int as year,
        (select count(*) from housing where id = any(${it.housingIds}::uuid[])) as housings,
        (select count(*) from terminal where id = any(${it.terminalIds}::uuid[])) as terminals,
        (select count(*) from line where id = any(${it.lineIds}::uuid[]) and plant_id = p.id) as lines,
        (select count(*) from tool where id = any(${it.toolIds}::uuid[]) and plant_id = p.id) as tools,
        exists (select from complaint where id = ${it.complaintId}::uuid and plant_id = p.id) as complaint,
        exists (select from eight_d_case where id = ${it.caseId}::uuid and plant_id = p.id) as case,
        exists (select from person o where o.id = ${it.ownerId}::uuid and exists (
          select from role_grant g where g.person_id = o.id and (g.plant_id is null or g.plant_id = p.id)
            and g.role::text = any(${owners}::text[]))) as owner
      from plant p where p.id = ${it.plantId}::uuid`,
    Facts,
  );
  if (!facts) throw unknownReference('plantId', 'plant');
  if (facts.housings !== distinct(it.housingIds).length) throw unknownReference('housingIds', 'housing');
  if (facts.terminals !== distinct(it.terminalIds).length) throw unknownReference('terminalIds', 'terminal');
  if (facts.lines !== distinct(it.lineIds).length) throw unknownReference('lineIds', 'line');
  if (facts.tools !== distinct(it.toolIds).length) throw unknownReference('toolIds', 'tool');
  if (it.complaintId && !facts.complaint) throw unknownReference('complaintId', 'complaint');
  if (it.caseId && !facts.case) throw unknownReference('caseId', 'case');
  if (!facts.owner) throw unknownReference('ownerId', 'person who may work on containment at this plant');
  return facts;
}
