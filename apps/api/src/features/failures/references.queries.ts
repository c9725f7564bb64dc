import { z } from 'zod';
import { unknownReference } from '#api/platform/problems.ts';
import type { ReportInput } from '#contracts/failures.ts';
import type { Tx } from '#db/client.ts';
import { sql, txOne } from '#db/sql.ts';

const Facts = z.object({
  plantCode: z.string(),
  today: z.string(),
  foundDay: z.string().nullable(),
  line: z.boolean(),
  stage: z.int().nullable(),
  housing: z.boolean(),
  safety: z.boolean(),
  terminal: z.boolean(),
  wire: z.boolean(),
  customer: z.boolean(),
  tools: z.int(),
});
export type Facts = z.infer<typeof Facts>;
type References = Pick<
  ReportInput,
  'plantId' | 'lineId' | 'stageId' | 'housingId' | 'terminalId' | 'wireId' | 'customerId' | 'toolIds' | 'foundAt'
>;

/**
 * Everything a report names, checked in one question. A retired row may stay where it was (`kept`) but is not chosen anew.
 * @throws `unknown_reference` with the field's path
 */
export async function checkReferences(
  tx: Tx,
  report: References,
  at: Date,
  kept: readonly string[] = [],
): Promise<Facts> {
  const usable = sql`(retired_at is null or id = any(${kept}::uuid[]))`;
  const toolIds = [...new Set(report.toolIds)];
  const facts = await txOne(
    tx,
    sql`select p.code as "plantCode", (${at}::timestamptz at time zone p.zone)::date::text as today,
        (${report.foundAt}::timestamptz at time zone p.zone)::date::text as "foundDay",
        exists (select from line where id = ${report.lineId}::uuid and plant_id = p.id and ${usable}) as line,
        (select common from stage where id = ${report.stageId}::uuid and plant_id = p.id and ${usable}) as stage,
        exists (select from housing where id = ${report.housingId}::uuid and ${usable}) as housing,
        exists (select from housing where id = ${report.housingId}::uuid and safety_relevant) as safety,
        exists (select from terminal where id = ${report.terminalId}::uuid and ${usable}) as terminal,
        exists (select from wire where id = ${report.wireId}::uuid and ${usable}) as wire,
        exists (select from customer where id = ${report.customerId}::uuid and ${usable}) as customer,
        (select count(*) from tool where id = any(${toolIds}::uuid[]) and plant_id = p.id and ${usable}) as tools
      from plant p where p.id = ${report.plantId}::uuid and (p.retired_at is null or p.id = any(${kept}::uuid[]))`,
    Facts,
  );
  if (!facts) throw unknownReference('plantId', 'plant');
  if (report.lineId && !facts.line) throw unknownReference('lineId', 'line');
  if (report.stageId && facts.stage === null) throw unknownReference('stageId', 'stage');
  if (report.housingId && !facts.housing) throw unknownReference('housingId', 'housing');
  if (report.terminalId && !facts.terminal) throw unknownReference('terminalId', 'terminal');
  if (report.wireId && !facts.wire) throw unknownReference('wireId', 'wire');
  if (report.customerId && !facts.customer) throw unknownReference('customerId', 'customer');
  if (facts.tools !== toolIds.length) throw unknownReference('toolIds', 'tool');
  return facts;
}
