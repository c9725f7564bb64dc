import { z } from 'zod';
import type { Tx } from '#db/client.ts';
import { sql, txOne, txRows } from '#db/sql.ts';

const Head = z.object({
  plantName: z.string(),
  zone: z.string(),
  customerName: z.string().nullable(),
  locale: z.enum(['en', 'de']),
  paper: z.enum(['A4', 'Letter']),
  part: z.string().nullable(),
  references: z.array(z.string()),
});
export type DocumentHead = z.infer<typeof Head>;

/** What the first page names. Only complaints of the case's own customer give their reference. */
export const headOf = (tx: Tx, caseId: string) =>
  txOne(
    tx,
    sql`select p.name as "plantName", p.zone, u.name as "customerName", coalesce(u.locale, p.locale) as locale,
        coalesce(u.paper, 'A4') as paper,
        nullif(concat_ws(', ', (select min(m.customer_part) from eight_d_case_complaint l join complaint m on m.id = l.complaint_id
          where l.case_id = c.id and m.customer_id = c.customer_id), h.code, t.code), '') as part,
        array(select distinct m.customer_ref from eight_d_case_complaint l join complaint m on m.id = l.complaint_id
          where l.case_id = c.id and m.customer_id = c.customer_id and m.customer_ref is not null order by 1) as references
      from eight_d_case c join plant p on p.id = c.plant_id left join customer u on u.id = c.customer_id
      left join housing h on h.id = c.housing_id left join terminal t on t.id = c.terminal_id
      where c.id = ${caseId}::uuid`,
    Head,
  );

const Promised = z.object({
  id: z.string(),
  kind: z.enum(['containment', 'corrective', 'preventive', 'read_across']),
  title: z.string(),
  state: z.enum(['agreed', 'under_way', 'held_up', 'carried_out', 'verified', 'given_up']),
  due: z.string(),
  planned: z.boolean(),
});
export type Promised = z.infer<typeof Promised>;

/** The actions of the case that stand; what was given up is not promised to a customer. */
export const promisedOf = (tx: Tx, caseId: string) =>
  txRows(
    tx,
    sql`select a.id, a.kind::text, a.title, a.state::text, a.due_on::text as due,
        exists (select from effect_plan e where e.action_id = a.id) as planned
      from action a where a.case_id = ${caseId}::uuid and a.state <> 'given_up' order by a.id`,
    Promised,
  );

export const otherCustomers = (tx: Tx, customerId: string | null) =>
  tx.customer.findMany({
    ...(customerId && { where: { id: { not: customerId } } }),
    select: { code: true, name: true },
    orderBy: { code: 'asc' },
  });

export const picturesOf = (tx: Tx, caseId: string, photoIds: readonly string[]) =>
  txRows(
    tx,
    sql`select h.id, h.file, h.width, h.height, h.caption, f.number from photo h
      join eight_d_case_report r on r.failure_id = h.failure_id and r.plant_id = h.plant_id
      join failure f on f.id = h.failure_id and f.plant_id = h.plant_id
      where r.case_id = ${caseId}::uuid and h.removed_at is null and h.id = any(${photoIds}::uuid[])
      order by array_position(${photoIds}::uuid[], h.id)`,
    z.object({
      id: z.string(),
      file: z.string(),
      width: z.int(),
      height: z.int(),
      caption: z.string().nullable(),
      number: z.string(),
    }),
  );
