/** Rows of a case as the service reads them inside its transaction. */
import { z } from 'zod';
import {
  type CaseContent,
  caseParts,
  type Discipline,
  type PartName,
  partNames,
  type SignRole,
} from '#contracts/case-parts.ts';
import type { Tx } from '#db/client.ts';
import { sql, txExecute, txOne, txRows } from '#db/sql.ts';
import type { CaseFacts } from './needs.rules.ts';

const Last = z.object({ last: z.int() });

/** The next running number of the plant's year; the counter stays locked until the transaction ends. */
export async function takeCaseNumber(tx: Tx, plantCode: string, plantId: string, year: number): Promise<string> {
  const row = await txOne(
    tx,
    sql`insert into eight_d_counter as c (plant_id, year, last) values (${plantId}::uuid, ${year}, 1)
      on conflict (plant_id, year) do update set last = c.last + 1 returning c.last`,
    Last,
  );
  return `${plantCode}-8D-${String(year % 100).padStart(2, '0')}-${String(row?.last ?? 1).padStart(3, '0')}`;
}

/** Lets everything that changes one case wait its turn, so that nothing is signed that is changing. */
export const lockCase = (tx: Tx, id: string): Promise<number> =>
  txExecute(tx, sql`select 1 from eight_d_case where id = ${id}::uuid for update`);

export interface StoredPart {
  content: unknown;
  version: number;
  changedAt: Date | null;
  changedBy: string | null;
}

/** Every part; one that was never saved is empty and has version 0. */
export async function readParts(tx: Tx, caseId: string): Promise<Record<PartName, StoredPart>> {
  const rows = await tx.eightDPart.findMany({ where: { caseId } });
  const stored = new Map(rows.map((row) => [row.part, row]));
  const partOf = (name: PartName): StoredPart => {
    const row = stored.get(name);
    return {
      content: caseParts[name].content.parse(row?.content ?? {}),
      version: row?.version ?? 0,
      changedAt: row?.changedAt ?? null,
      changedBy: row?.changedBy ?? null,
    };
  };
  return Object.fromEntries(partNames.map((name) => [name, partOf(name)])) as Record<PartName, StoredPart>;
}

export const contentOf = (parts: Record<PartName, StoredPart>): CaseContent =>
  Object.fromEntries(partNames.map((name) => [name, parts[name].content])) as unknown as CaseContent;

/** A discipline changes when one of its parts does. */
export const versionOfDiscipline = (parts: Record<PartName, StoredPart>, discipline: Discipline): number =>
  partNames
    .filter((name) => caseParts[name].discipline === discipline)
    .reduce((sum, name) => sum + parts[name].version, 0);

export const liveSignatures = (tx: Tx, caseId: string) =>
  tx.eightDSignature.findMany({ where: { caseId, voidedAt: null }, orderBy: { id: 'asc' } });

export function rolesByDiscipline(signatures: readonly { discipline: number; role: string }[]) {
  const roles = new Map<Discipline, SignRole[]>();
  for (const { discipline, role } of signatures)
    roles.set(discipline as Discipline, [...(roles.get(discipline as Discipline) ?? []), role as SignRole]);
  return roles;
}

const LinkedAction = z.object({
  kind: z.enum(['containment', 'corrective', 'preventive', 'read_across']),
  state: z.string(),
  verdict: z.enum(['held', 'not_shown_yet', 'did_not_hold']).nullable(),
});
/** Actions of the case with the newest verdict on their effect. */
const readActions = (tx: Tx, caseId: string) =>
  txRows(
    tx,
    sql`select a.kind::text, a.state::text, (select l.verdict::text from effect_look l where l.action_id = a.id
        order by l.day desc limit 1) as verdict
      from action a where a.case_id = ${caseId}::uuid`,
    LinkedAction,
  );

const Safety = z.object({ safety: z.boolean() });
/** Safety-relevant by its own mark, by a linked report or by a linked complaint. */
export async function isSafetyRelevant(tx: Tx, caseId: string): Promise<boolean> {
  const row = await txOne(
    tx,
    sql`select c.safety
        or exists (select from eight_d_case_report r join failure f on f.plant_id = r.plant_id and f.id = r.failure_id
          where r.case_id = c.id and f.safety)
        or exists (select from eight_d_case_complaint l join complaint m on m.id = l.complaint_id
          where l.case_id = c.id and m.safety) as safety
      from eight_d_case c where c.id = ${caseId}::uuid`,
    Safety,
  );
  return row?.safety ?? false;
}

/** What the rules need to know, as it stands in this transaction. */
export async function readFacts(tx: Tx, caseId: string, parts: Record<PartName, StoredPart>): Promise<CaseFacts> {
  const [signatures, actions, containments, complaints, documentsKept, safety] = [
    await liveSignatures(tx, caseId),
    await readActions(tx, caseId),
    await tx.containment.findMany({ where: { caseId }, select: { closedAt: true } }),
    await tx.eightDCaseComplaint.count({ where: { caseId } }),
    await tx.eightDDocument.count({ where: { caseId } }),
    await isSafetyRelevant(tx, caseId),
  ];
  return {
    content: contentOf(parts),
    safety,
    signed: rolesByDiscipline(signatures),
    actions,
    containments: containments.map(({ closedAt }) => ({ closed: closedAt !== null })),
    complaints,
    documentsKept,
  };
}
