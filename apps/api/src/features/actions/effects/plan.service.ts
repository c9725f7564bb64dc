import { z } from 'zod';
import { addDays, type Day } from '#analysis/calendar/day.ts';
import { stateProof } from '#analysis/effectiveness/state-proof.ts';
import { recordChange } from '#api/platform/audit.ts';
import { problem, unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { EffectPlanInput, EffectProof } from '#contracts/effects.ts';
import type { Tx } from '#db/client.ts';
import { sql, txOne } from '#db/sql.ts';
import { isChangeable } from '../actions.rules.ts';
import { PlantDay, plantDaySql } from '../plant-day.queries.ts';
import { openForWrite } from '../read.service.ts';
import { changeRow } from '../write.ts';
import { effectData } from './data.service.ts';
import { isWiderThanProduction } from './scope.ts';

/** Enough to see the pace of the last four weeks, whenever the period before was. */
const paceDays = 35;
const earlier = (a: Day, b: Day): Day => (a < b ? a : b);

/** What would count as proof, from the data as they are today. */
export async function proofOf(tx: Tx, plantId: string, plan: EffectPlanInput, at: Date): Promise<EffectProof> {
  const plant = await txOne(tx, plantDaySql(plantId, at), PlantDay);
  if (!plant) throw unknownReference('plantId', 'plant');
  const { today } = plant;
  if (plan.before.to > addDays(today, 1))
    throw problem('not_consistent', `At the plant it is ${today}. The period before must be over.`, [
      { path: 'body/before/to', message: 'lies in the future' },
    ]);
  await requireScope(tx, plantId, plan);
  const from = earlier(plan.before.from, addDays(today, -paceDays));
  const data = await effectData(tx, plantId, plan.scope, { from, today });
  const proof = stateProof(data, plan, today);
  return {
    ...proof,
    wider: isWiderThanProduction(plan.scope),
    maturity: data.maturity ? [...data.maturity] : null,
    statedOn: today,
  };
}

const Missing = z.object({ field: z.string() });

/** What the scope names exists, and lines and tools belong to the plant. */
async function requireScope(tx: Tx, plantId: string, { scope }: EffectPlanInput): Promise<void> {
  const row = await txOne(
    tx,
    sql`select n.field from (values
        ('housingId', ${scope.housingId}::uuid, exists (select from housing r where r.id = ${scope.housingId}::uuid)),
        ('terminalId', ${scope.terminalId}::uuid, exists (select from terminal r where r.id = ${scope.terminalId}::uuid)),
        ('customerId', ${scope.customerId}::uuid, exists (select from customer r where r.id = ${scope.customerId}::uuid)),
        ('lineId', ${scope.lineId}::uuid, exists (select from line r where r.id = ${scope.lineId}::uuid and r.plant_id = ${plantId}::uuid)),
        ('toolId', ${scope.toolId}::uuid, exists (select from tool r where r.id = ${scope.toolId}::uuid and r.plant_id = ${plantId}::uuid))
      ) as n (field, id, known) where n.id is not null and not n.known limit 1`,
    Missing,
  );
  if (row) throw unknownReference(`scope/${row.field}`, 'part, line, tool or customer');
}

const day = (text: string): Date => new Date(`${text}T00:00:00Z`);

/** Keeps the plan with the figures of this moment. The caller has opened the action for writing. */
export async function planEffect(unit: Unit, actionId: string, plan: EffectPlanInput): Promise<void> {
  const { tx, at } = unit;
  const action = await tx.action.findUniqueOrThrow({ where: { id: actionId } });
  if (action.kind === 'containment')
    throw problem(
      'not_consistent',
      'Containment keeps faults in; it does not lower their rate. Plan the effect of the corrective action.',
      [{ path: 'body/kind', message: 'has no effect on the rate' }],
    );
  const planned = await proofOf(tx, action.plantId, plan, at);
  const { scope } = plan;
  const row = {
    cause: scope.cause,
    subCause: scope.subCause,
    housingId: scope.housingId,
    terminalId: scope.terminalId,
    toolId: scope.toolId,
    lineId: scope.lineId,
    customerId: scope.customerId,
    sources: scope.sources,
    beforeFrom: day(plan.before.from),
    beforeTo: day(plan.before.to),
    cleanPoint: day(plan.cleanPoint),
    reduction: plan.reduction,
    onRecurrence: plan.onRecurrence,
    planned,
    plannedAt: at,
  };
  await tx.effectPlan.upsert({ where: { actionId }, create: { actionId, ...row }, update: row });
}

/** States or restates what would count as proof, while the action is not yet carried out. */
export async function changePlan(unit: Unit, actionId: string, version: number, plan: EffectPlanInput): Promise<void> {
  const action = await openForWrite(unit, actionId);
  if (!isChangeable(action.state))
    throw problem(
      'conflict',
      'What counts as proof is stated before it is carried out. Open the action again first, with a reason.',
    );
  const before = await readPlan(unit.tx, actionId);
  await changeRow(unit, actionId, version, {});
  await planEffect(unit, actionId, plan);
  const after = await readPlan(unit.tx, actionId);
  await recordChange(unit, {
    action: before ? 'changed' : 'planned',
    entity: 'effect_plan',
    entityId: actionId,
    label: action.number,
    plantId: action.plantId,
    before,
    after,
  });
}

export interface StoredPlan {
  plan: EffectPlanInput;
  planned: EffectProof;
  plannedAt: string;
}

export async function readPlan(tx: Tx, actionId: string): Promise<StoredPlan | null> {
  const row = await tx.effectPlan.findUnique({ where: { actionId } });
  if (!row) return null;
  const { cause, subCause, housingId, terminalId, toolId, lineId, customerId, sources } = row;
  const text = (date: Date) => date.toISOString().slice(0, 10);
  return {
    plan: {
      scope: { cause, subCause, housingId, terminalId, toolId, lineId, customerId, sources },
      before: { from: text(row.beforeFrom), to: text(row.beforeTo) },
      cleanPoint: text(row.cleanPoint),
      reduction: Number(row.reduction),
      onRecurrence: row.onRecurrence,
    },
    planned: row.planned as unknown as EffectProof,
    plannedAt: row.plannedAt.toISOString(),
  };
}
