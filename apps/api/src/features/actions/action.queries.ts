import { z } from 'zod';
import { ActionEvidence, ActionOf, ActionState, ActionStep } from '#contracts/actions.ts';
import type { Tx } from '#db/client.ts';
import { sql, txOne, txRows } from '#db/sql.ts';
import { rowColumns, rowJoins } from './list.queries.ts';

const instant = z.coerce.date().transform((at) => at.toISOString());

/** An action as stored, with what decides who may do what to it. */
const Stored = ActionOf.omit({ mayVerify: true, evidence: true, steps: true, cost: true }).extend({
  effortHours: z.coerce.number().nullable(),
  costMinor: z.coerce.number().nullable(),
  costCurrency: z.string().nullable(),
  carriedOutBy: z.string().nullable(),
  complaintPlant: z.string().nullable(),
  containmentPlant: z.string().nullable(),
  casePlant: z.string().nullable(),
});
export type Stored = z.infer<typeof Stored>;

export const findAction = (tx: Tx, id: string, at: Date): Promise<Stored | null> =>
  txOne(
    tx,
    sql`select ${rowColumns(at)}, a.description, a.effort_hours as "effortHours", a.cost_minor as "costMinor",
      a.cost_currency as "costCurrency", a.prevention, a.opened_by as "openedBy", a.carried_out_on::text as "carriedOutOn",
      a.carried_out_by as "carriedOutBy", v.name as "verifiedBy", a.verified_on::text as "verifiedOn", a.verification,
      a.complaint_id as "complaintId", a.containment_id as "containmentId", a.case_id as "caseId",
      a.review_id as "reviewId", a.version,
      (select c.plant_id from complaint c where c.id = a.complaint_id) as "complaintPlant",
      (select c.plant_id from containment c where c.id = a.containment_id) as "containmentPlant",
      (select c.plant_id from eight_d_case c where c.id = a.case_id) as "casePlant"
      from action a ${rowJoins} left join person v on v.id = a.verified_by where a.id = ${id}::uuid`,
    Stored,
  );

export const findEvidence = (tx: Tx, actionId: string): Promise<ActionEvidence[]> =>
  txRows(
    tx,
    sql`select e.id, e.kind, e.text, e.failure_id as "failureId", f.number as "failureNumber", e.file_name as "fileName",
      e.bytes, e.added_at as "addedAt", e.added_by as "addedBy"
      from action_evidence e join action a on a.id = e.action_id
      left join failure f on f.id = e.failure_id and f.plant_id = a.plant_id
      where e.action_id = ${actionId}::uuid and e.removed_at is null order by e.id`,
    ActionEvidence.extend({ addedAt: instant }),
  );

export const findSteps = (tx: Tx, actionId: string) =>
  txRows(
    tx,
    sql`select s.at, s.actor, s.state, s.reason from action_step s where s.action_id = ${actionId}::uuid order by s.id`,
    ActionStep.extend({ at: instant }),
  );

/** Locks the action until the transaction ends, so that its state stays what it is. */
export const lockAction = (tx: Tx, id: string) =>
  txOne(tx, sql`select a.state from action a where a.id = ${id}::uuid for update`, z.object({ state: ActionState }));
