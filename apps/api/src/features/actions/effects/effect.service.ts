import { addDays } from '#analysis/calendar/day.ts';
import type { Actor } from '#api/platform/actor.ts';
import type { Effect, EffectLook } from '#contracts/effects.ts';
import type { Tx } from '#db/client.ts';
import { txOne } from '#db/sql.ts';
import { isChangeable } from '../actions.rules.ts';
import { PlantDay, plantDaySql } from '../plant-day.queries.ts';
import { requireAction } from '../read.service.ts';
import { type Judged, judgePlan, perMillion, verdictsOver, weeksFor } from './judge.service.ts';
import { readPlan, type StoredPlan } from './plan.service.ts';
import { findRecurrences } from './recurrence.service.ts';

/** Whether an action held, judged from the data as they are now; null without a plan. */
export async function readEffect(tx: Tx, actor: Actor, id: string, at: Date): Promise<Effect | null> {
  const action = await requireAction(tx, actor, id, at);
  const stored = await readPlan(tx, id);
  if (!stored) return null;
  const { today } = (await txOne(tx, plantDaySql(action.plantId, at), PlantDay))!;
  const judged = await judgePlan(tx, action.plantId, stored, today);
  const seen = await tx.effectRecurrence.findMany({ where: { actionId: id } });
  const reopeners = new Set(seen.filter(({ reopened }) => reopened).map(({ failureId }) => failureId));
  const found = await findRecurrences(tx, action.plantId, stored.plan, today);
  return {
    ...stored,
    frozen: !isChangeable(action.state),
    ...judgementOf(judged, stored),
    kept: await keptLooks(tx, id),
    weeks: weeksFor(judged, stored.plan.before.from, today),
    recurrences: found.map((one) => ({ ...one, reopened: reopeners.has(one.failureId) })),
  };
}

function judgementOf({ data, before, after, now, history }: Judged, { plan }: StoredPlan) {
  const lastDay = addDays(plan.before.to, -1);
  return {
    verdict: history.verdict,
    shownOn: history.shownOn,
    excludedOn: history.excludedOn,
    fewerThanPlanned: now.fewerThanPlanned,
    reason: now.reason,
    before: { ...before, rate: perMillion(before) },
    after: { ...after, rate: perMillion(after) },
    ratio: {
      value: now.ratio.value,
      interval: now.ratio.interval,
      p: now.ratio.p?.less ?? null,
      overAllLooks: now.ratioOverAllLooks,
    },
    evidence: now.evidence,
    endedAtFailure: data.reports.some(({ builtOn }) => builtOn === lastDay),
    looks: verdictsOver(history),
  };
}

/** What was said at the time, newest first. */
async function keptLooks(tx: Tx, actionId: string): Promise<EffectLook[]> {
  const rows = await tx.effectLook.findMany({ where: { actionId }, orderBy: { day: 'desc' }, take: 60 });
  return rows.map((row) => ({
    ...(row.judgement as unknown as Pick<EffectLook, 'ratio' | 'interval'>),
    day: row.day.toISOString().slice(0, 10),
    failures: row.failures,
    exposure: row.exposure,
    verdict: row.verdict,
  }));
}
