import { notify } from '#api/features/notices/notify.service.ts';
import type { Unit } from '#api/platform/unit.ts';
import { actionTerms as german } from '#contracts/action-terms.de.ts';
import { actionTerms as english } from '#contracts/action-terms.en.ts';
import { type Fact, fill } from '#contracts/notice-words.ts';
import { txOne } from '#db/sql.ts';
import { findAction, lockAction, type Stored } from '../action.queries.ts';
import { PlantDay, plantDaySql } from '../plant-day.queries.ts';
import { addStep, auditAction, changeRow } from '../write.ts';
import { judgePlan, presentLook } from './judge.service.ts';
import { readPlan, type StoredPlan } from './plan.service.ts';
import { findRecurrences, type Recurrence } from './recurrence.service.ts';

/** Why an action is open again, in the plant's language. */
const reasonFor = (why: 'verdict' | 'recurrence', facts: Record<string, Fact>, locale: string): string =>
  fill((locale === 'de' ? german : english).openedAgain[why], facts, locale);

type Today = Pick<PlantDay, 'today' | 'locale'>;

const finished = (state: Stored['state']): boolean => state === 'carried_out' || state === 'verified';

async function reopen(unit: Unit, action: Stored, reason: string): Promise<void> {
  await changeRow(unit, action.id, action.version, {
    state: 'under_way',
    stateReason: reason,
    stateAt: unit.at,
    carriedOutOn: null,
    carriedOutBy: null,
    verifiedBy: null,
    verifiedOn: null,
    verification: null,
    reopened: { increment: 1 },
  });
  await addStep(unit, action.id, 'under_way', reason);
  const after = (await findAction(unit.tx, action.id, unit.at))!;
  await auditAction(unit, 'opened again', action, after);
}

const named = (reports: readonly Recurrence[]): string => {
  const numbers = reports.slice(0, 3).map(({ number }) => number);
  return [numbers.join(', '), ...(reports.length > 3 ? [`+ ${reports.length - 3}`] : [])].join(' ');
};

/** Reports that the action should have prevented and that were not seen before: noted once each, told, and it opens again. */
async function meetRecurrences(
  unit: Unit,
  action: Stored,
  { plan }: StoredPlan,
  { today, locale }: Today,
): Promise<boolean> {
  const { tx, at } = unit;
  const certain = (await findRecurrences(tx, action.plantId, plan, today)).filter((one) => one.certain);
  const seen = await tx.effectRecurrence.findMany({ where: { actionId: action.id }, select: { failureId: true } });
  const known = new Set(seen.map(({ failureId }) => failureId));
  const fresh = certain.filter(({ failureId }) => !known.has(failureId));
  if (fresh.length === 0) return false;
  const opens = plan.onRecurrence === 'reopen' && finished(action.state);
  await tx.effectRecurrence.createMany({
    data: fresh.map(({ failureId }) => ({ actionId: action.id, failureId, seenAt: at, reopened: opens })),
  });
  if (opens) await reopen(unit, action, reasonFor('recurrence', { reports: named(fresh) }, locale));
  await notify(unit, {
    to: [action.ownerId],
    kind: 'action_recurrence',
    key: `action ${action.id} recurrence ${fresh[0]!.failureId}`,
    facts: {
      number: action.number,
      title: action.title,
      reports: named(fresh),
      outcome: opens ? '#reopened' : '#told',
    },
    link: `/actions/${action.id}`,
    plantId: action.plantId,
  });
  return opens;
}

/** Judges once a day, keeps what was said, tells when the verdict changed, and opens again what did not hold. */
async function lookOnce(unit: Unit, action: Stored, stored: StoredPlan, { today, locale }: Today): Promise<void> {
  const { tx, at } = unit;
  const day = new Date(`${today}T00:00:00Z`);
  const last = await tx.effectLook.findFirst({ where: { actionId: action.id }, orderBy: { day: 'desc' } });
  if (stored.plan.cleanPoint > today || (last && last.day >= day)) return;
  const { history, after, now } = await judgePlan(tx, action.plantId, stored, today);
  const { ratio, interval } = presentLook({ day: today, after, judgement: now }, history.verdict);
  await tx.effectLook.create({
    data: {
      actionId: action.id,
      day,
      at,
      failures: after.failures,
      exposure: after.exposure,
      verdict: history.verdict,
      judgement: { ratio, interval, fewerThanPlanned: now.fewerThanPlanned },
    },
  });
  if (history.verdict === (last?.verdict ?? 'not_shown_yet')) return;
  if (history.verdict === 'did_not_hold' && finished(action.state))
    await reopen(unit, action, reasonFor('verdict', { day: today }, locale));
  await notify(unit, {
    to: [action.ownerId],
    kind: 'effect_verdict',
    key: `action ${action.id} verdict ${today}`,
    facts: { number: action.number, title: action.title, verdict: `#${history.verdict}` },
    link: `/actions/${action.id}`,
    plantId: action.plantId,
  });
}

/** One action looked at by the clock: recurrences, then the verdict of the day. */
export async function watchAction(unit: Unit, id: string): Promise<void> {
  await lockAction(unit.tx, id);
  const action = await findAction(unit.tx, id, unit.at);
  const stored = action && (await readPlan(unit.tx, id));
  if (!stored || action.state === 'given_up') return;
  const plant = (await txOne(unit.tx, plantDaySql(action.plantId, unit.at), PlantDay))!;
  const opened = await meetRecurrences(unit, action, stored, plant);
  const present = opened ? (await findAction(unit.tx, id, unit.at))! : action;
  await lookOnce(unit, present, stored, plant);
}
