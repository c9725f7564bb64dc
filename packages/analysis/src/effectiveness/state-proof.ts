import { addDays, type Day, weekdayOf } from '../calendar/day.ts';
import type { Estimate } from '../estimate.ts';
import { failureRate } from '../rates/failure-rate.ts';
import type { CountedExposure } from '../rates/rate-ratio.ts';
import { countEffect, type EffectData } from './count-effect.ts';
import { type NeededExposure, neededExposure } from './needed-exposure.ts';
import { supplyDate } from './supply-date.ts';

export type Proof = {
  before: CountedExposure;
  /** failures per million of the exposure */
  rateBefore: Estimate;
  needed: NeededExposure;
  /** exposure a day over the last four weeks */
  perDay: number;
  supplyOn: Day | null;
};

const recentDays = 28;

/**
 * What would count as proof of a fix, stated before it is in place: the rate before, the exposure needed to show the promised
 * reduction at 95 % with a chance of 80 % however often one looks, and the day when production at the pace of the last four weeks
 * will have supplied it.
 *
 * @param reduction promised fraction, above 0 and at most 1
 * @param today what is known at the end of this day counts
 */
export function stateProof(
  data: EffectData,
  plan: { before: { from: Day; to: Day }; cleanPoint: Day; reduction: number },
  today: Day,
): Proof {
  const before = countEffect(data, plan.before, today);
  const needed = neededExposure(before, plan.reduction);
  const byDay = new Map(data.builds.map(({ day, exposure }) => [day, exposure]));
  const recent = Array.from({ length: recentDays }, (_, ago) => byDay.get(addDays(today, -1 - ago)) ?? 0);
  const from = plan.cleanPoint > today ? plan.cleanPoint : today;
  const week = Array.from({ length: 7 }, (_, ahead) => meanOnWeekday(recent, today, addDays(from, ahead)));
  const forecast = { from, perDay: week, ...(data.maturity && { maturityByMonth: data.maturity }) };
  return {
    before,
    rateBefore: failureRate(before),
    needed,
    perDay: recent.reduce((sum, exposure) => sum + exposure, 0) / recentDays,
    supplyOn: needed.value === null ? null : supplyDate(needed.value, forecast),
  };
}

/** Mean over the four same weekdays before today; `recent[0]` is yesterday. */
function meanOnWeekday(recent: readonly number[], today: Day, day: Day): number {
  const same = recent.filter((_, ago) => weekdayOf(addDays(today, -1 - ago)) === weekdayOf(day));
  return same.reduce((sum, exposure) => sum + exposure, 0) / same.length;
}
