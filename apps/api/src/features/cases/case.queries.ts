import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { type CaseReport, CaseRow, type listCases } from '#contracts/cases.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { stageOf } from '#contracts/taxonomy.ts';
import type { Database, Tx } from '#db/client.ts';
import { empty, join, queryRows, type Sql, sql, txRows } from '#db/sql.ts';

type Query = NonNullable<Output<typeof listCases.query>>;
const Instant = z.coerce.date().transform((at) => at.toISOString());

export const RowOf = CaseRow.extend({ openedAt: Instant, closedAt: Instant.nullable() });

/** Cases with what a list shows of them. */
export const rowsSql = (conditions: readonly Sql[], limit: Sql = empty): Sql => sql`
  select c.id, c.plant_id as "plantId", p.code as "plantCode", c.number, c.title, c.state::text,
    c.safety or exists (select from eight_d_case_report r join failure f on f.plant_id = r.plant_id and f.id = r.failure_id
        where r.case_id = c.id and f.safety)
      or exists (select from eight_d_case_complaint l join complaint m on m.id = l.complaint_id
        where l.case_id = c.id and m.safety) as safety,
    c.customer_id as "customerId", u.code as "customerCode", c.housing_id as "housingId", h.code as "housingCode",
    c.terminal_id as "terminalId", t.code as "terminalCode", c.cause::text, c.opened_at as "openedAt",
    c.opened_by_name as "openedBy", c.closed_at as "closedAt",
    array(select s.discipline::int from eight_d_signature s where s.case_id = c.id and s.voided_at is null and s.discipline < 8
      group by s.discipline union select 8 where c.state = 'closed' order by 1) as signed,
    (select count(*)::int from eight_d_case_report r where r.case_id = c.id) as reports,
    (select count(*)::int from eight_d_case_complaint l where l.case_id = c.id) as complaints
  from eight_d_case c
  join plant p on p.id = c.plant_id
  left join customer u on u.id = c.customer_id
  left join housing h on h.id = c.housing_id
  left join terminal t on t.id = c.terminal_id
  where ${join(conditions, ' and ')} order by c.id desc ${limit}`;

export async function listRows(db: Database, scope: PlantScope, query: Query) {
  const after = decodeCursor(query.cursor, z.tuple([z.uuid()]));
  const like = query.q ? `%${query.q.replace(/[\\%_]/g, '\\$&')}%` : null;
  const conditions = [
    sql`true`,
    ...(scope === 'all' ? [] : [sql`c.plant_id = any(${[...scope]}::uuid[])`]),
    ...(query.state?.length ? [sql`c.state = any(${query.state}::case_state[])`] : []),
    ...(query.failure
      ? [
          sql`exists (select from eight_d_case_report r where r.case_id = c.id and r.failure_id = ${query.failure}::uuid)`,
        ]
      : []),
    ...(query.complaint
      ? [
          sql`exists (select from eight_d_case_complaint l where l.case_id = c.id and l.complaint_id = ${query.complaint}::uuid)`,
        ]
      : []),
    ...(like ? [sql`(c.number ilike ${like} or c.title ilike ${like})`] : []),
    ...(after ? [sql`c.id < ${after[0]}::uuid`] : []),
  ];
  const rows = await queryRows(db.pool, rowsSql(conditions, sql`limit ${query.limit + 1}`), RowOf);
  return toPage(rows, query.limit, (row) => [row.id]);
}

const Report = z.object({
  id: z.string(),
  number: z.string(),
  foundOn: z.string(),
  found: z.int().transform(stageOf),
  quantityFound: z.int(),
  housingCode: z.string().nullable(),
  terminalCode: z.string().nullable(),
  safety: z.boolean(),
});

/** The linked reports with their photos. */
export async function reportsOf(tx: Tx, caseId: string): Promise<CaseReport[]> {
  const reports = await txRows(
    tx,
    sql`select f.id, f.number, f.found_on::text as "foundOn", f.found::int, f.quantity_found as "quantityFound",
        h.code as "housingCode", t.code as "terminalCode", f.safety
      from eight_d_case_report r join failure f on f.plant_id = r.plant_id and f.id = r.failure_id
      left join housing h on h.id = f.housing_id left join terminal t on t.id = f.terminal_id
      where r.case_id = ${caseId}::uuid order by f.found_on, f.number`,
    Report,
  );
  const photos = await tx.photo.findMany({
    where: { failureId: { in: reports.map(({ id }) => id) }, removedAt: null },
    orderBy: { id: 'asc' },
  });
  return reports.map((report) => ({
    ...report,
    photos: photos
      .filter(({ failureId }) => failureId === report.id)
      .map(({ id, width, height, bytes, caption, addedAt }) => ({
        ...{ id, width, height, bytes, caption },
        addedAt: addedAt.toISOString(),
      })),
  }));
}

const Complaint = z.object({ id: z.string(), number: z.string(), title: z.string(), safety: z.boolean() });
export const complaintsOf = (tx: Tx, caseId: string) =>
  txRows(
    tx,
    sql`select m.id, m.number, m.title, m.safety from eight_d_case_complaint l join complaint m on m.id = l.complaint_id
      where l.case_id = ${caseId}::uuid order by m.number`,
    Complaint,
  );

const Asked = z.object({
  plantCode: z.string(),
  askedAt: Instant,
  answer: z.enum(['applies', 'does_not_apply']).nullable(),
  answerText: z.string().nullable(),
  answeredAt: Instant.nullable(),
  answeredBy: z.string().nullable(),
});
export const askedOf = (tx: Tx, caseId: string) =>
  txRows(
    tx,
    sql`select p.code as "plantCode", r.asked_at as "askedAt", r.answer::text, r.answer_text as "answerText",
        r.answered_at as "answeredAt", r.answered_by as "answeredBy"
      from read_across r join plant p on p.id = r.plant_id
      where r.case_id = ${caseId}::uuid and r.withdrawn_at is null order by p.code`,
    Asked,
  );
