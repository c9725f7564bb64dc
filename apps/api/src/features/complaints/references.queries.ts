import { z } from 'zod';
import { unknownReference } from '#api/platform/problems.ts';
import type { ComplaintInput } from '#contracts/complaints.ts';
import { allows, roles } from '#contracts/permissions.ts';
import type { Tx } from '#db/client.ts';
import { sql, txOne } from '#db/sql.ts';

const Facts = z.object({
  plantCode: z.string(),
  today: z.string(),
  year: z.int(),
  customerCode: z.string().nullable(),
  housing: z.boolean(),
  safety: z.boolean(),
  terminal: z.boolean(),
  owner: z.boolean(),
});
export type Facts = z.infer<typeof Facts>;
type References = Pick<ComplaintInput, 'plantId' | 'customerId' | 'housingId' | 'terminalId'> & { ownerId: string };

const owners = roles.filter((role) => allows('complaints.write', role));

/**
 * Everything a complaint names, checked in one question. A retired row may stay where it was (`kept`).
 * @throws `unknown_reference` with the field's path
 */
export async function checkReferences(
  tx: Tx,
  names: References,
  at: Date,
  kept: readonly string[] = [],
): Promise<Facts> {
  const usable = sql`(retired_at is null or id = any(${kept}::uuid[]))`;
  const facts = await txOne(
    tx,
    sql`select p.code as "plantCode", (${at}::timestamptz at time zone p.zone)::date::text as today,
        extract(year from ${at}::timestamptz at time zone p.zone)::int as year,
        (select code from customer where id = ${names.customerId}::uuid and ${usable}) as "customerCode",
        exists (select from housing where id = ${names.housingId}::uuid and ${usable}) as housing,
        exists (select from housing where id = ${names.housingId}::uuid and safety_relevant) as safety,
        exists (select from terminal where id = ${names.terminalId}::uuid and ${usable}) as terminal,
        exists (select from person where id = ${names.ownerId}::uuid and ${usable} and (id = any(${kept}::uuid[]) or exists (
          select from role_grant g where g.person_id = person.id and (g.plant_id is null or g.plant_id = p.id)
            and g.role::text = any(${owners}::text[])))) as owner
      from plant p where p.id = ${names.plantId}::uuid and (p.retired_at is null or p.id = any(${kept}::uuid[]))`,
    Facts,
  );
  if (!facts) throw unknownReference('plantId', 'plant');
  if (facts.customerCode === null) throw unknownReference('customerId', 'customer');
  if (names.housingId && !facts.housing) throw unknownReference('housingId', 'housing');
  if (names.terminalId && !facts.terminal) throw unknownReference('terminalId', 'terminal');
  if (!facts.owner) throw unknownReference('ownerId', 'person who may work on complaints at this plant');
  return facts;
}
