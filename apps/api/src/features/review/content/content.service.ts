import { addDays } from '#analysis/calendar/day.ts';
import type { Period } from '#analysis/calendar/period.ts';
import { prepare } from '#api/features/analyses/asked.service.ts';
import { weekOf } from '#api/features/week/week.service.ts';
import { version as application } from '#api/platform/version.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import type { Database } from '#db/client.ts';
import { dataVersion, type Place } from '../review.queries.ts';
import { plantsAsked, readerOf, type Scope } from '../scope.rules.ts';
import { complaintsPart } from './complaints.ts';
import { escapesPart } from './escapes.ts';
import { followUpPart } from './follow-up.ts';
import { preventionPart } from './prevention.ts';
import { signalsPart } from './signals.ts';

const daysLookedBack = 13 * 7;

export interface Question {
  scope: Scope;
  places: readonly Place[];
  period: Period;
  at: Date;
}

/** Everything that a review shows of a week but its own decisions, counted now. */
export async function countReview(
  db: Database,
  { scope, places, period, at }: Question,
): Promise<Omit<ReviewContent, 'decisions'>> {
  const reader = readerOf(scope);
  const plant = plantsAsked(scope);
  const seen = plant ?? 'all';
  const own: Filter = { ...period, plant };
  const lookedBack = { from: addDays(period.to, -daysLookedBack), to: period.to };
  const [week, quarter] = await Promise.all(
    [period, lookedBack].map((of) => prepare(db, reader, { ...of, plant }, at)),
  );
  const [data, figures, escapes, signals, prevention, complaints, followUp] = await Promise.all([
    dataVersion(db, scope),
    weekOf(week!, plant),
    escapesPart(week!, { reader, quarter: { ...lookedBack, plant }, own, at }),
    signalsPart(quarter!, { ...lookedBack, plant }, at),
    preventionPart(db, seen),
    complaintsPart(db, reader, seen, at),
    followUpPart(db, { reader, seen, plantIds: scope.plantIds, weekFrom: period.from, at }),
  ]);
  const { headlines, topCauses: causes, costliest, decisions: waiting, gaps, compared } = figures;
  return {
    ...week!.head,
    schema: 1,
    group: scope.group,
    places: places.map(({ id, code, name, zone }) => ({ id, code, name, zone })),
    compared,
    lookedBack,
    data: { figuresAt: at.toISOString(), application, ...data },
    ...followUp,
    ...{ signals, headlines, causes, costliest, waiting, escapes, prevention, complaints, gaps },
  };
}
