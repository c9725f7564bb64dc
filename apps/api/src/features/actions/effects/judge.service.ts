import { addDays, type Day } from '#analysis/calendar/day.ts';
import { weeksOf } from '#analysis/calendar/period.ts';
import { countEffect, type EffectData, looksSince } from '#analysis/effectiveness/count-effect.ts';
import { type EffectJudgement, judgeEffect } from '#analysis/effectiveness/judge-effect.ts';
import { type EffectHistory, type JudgedLook, judgeOverTime } from '#analysis/effectiveness/judge-over-time.ts';
import { failureRate, partsPerMillion } from '#analysis/rates/failure-rate.ts';
import type { CountedExposure } from '#analysis/rates/rate-ratio.ts';
import type { EffectLook } from '#contracts/effects.ts';
import type { Tx } from '#db/client.ts';
import { effectData } from './data.service.ts';
import type { StoredPlan } from './plan.service.ts';

export interface Judged {
  data: EffectData;
  before: CountedExposure;
  after: CountedExposure;
  now: EffectJudgement;
  history: EffectHistory;
}

/** Judges a planned effect from the data as they are, at every week since the clean point and today. */
export async function judgePlan(tx: Tx, plantId: string, { plan, planned }: StoredPlan, today: Day): Promise<Judged> {
  const data = await effectData(tx, plantId, plan.scope, { from: plan.before.from, today });
  const before = countEffect(data, plan.before, today);
  const promised = { before, reduction: plan.reduction, plannedExposure: planned.needed.value };
  const history = judgeOverTime(promised, looksSince(data, plan.cleanPoint, today));
  const after = countEffect(data, { from: plan.cleanPoint, to: addDays(today, 1) }, today);
  const now = history.looks.at(-1)?.judgement ?? judgeEffect(promised, after);
  return { data, before, after, now, history };
}

/** What was counted and said at one look. */
export const presentLook = ({ day, after, judgement }: JudgedLook, verdict: EffectLook['verdict']): EffectLook => ({
  day,
  failures: after.failures,
  exposure: after.exposure,
  verdict,
  ratio: judgement.ratio.value,
  interval: judgement.ratioOverAllLooks,
});

/** A claim once made stays made: what the history says up to each look. */
export function verdictsOver({ looks, shownOn, excludedOn }: EffectHistory): EffectLook[] {
  return looks.map((look) =>
    presentLook(
      look,
      excludedOn && excludedOn <= look.day ? 'did_not_hold' : shownOn && shownOn <= look.day ? 'held' : 'not_shown_yet',
    ),
  );
}

export const perMillion = (counted: CountedExposure) => failureRate({ ...counted, per: partsPerMillion });

/** Failures and exposure by week built, before and after, for the time axis; four weeks before the period and none after today. */
export const weeksFor = ({ data }: Judged, from: Day, today: Day) =>
  weeksOf({ from, to: addDays(today, 1) }).map((week) => {
    const counted = countEffect(data, week, today);
    return { ...week, ...counted, rate: perMillion(counted) };
  });
