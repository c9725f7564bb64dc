import { estimate, notComputable } from '#analysis/estimate.ts';
import { binomialInterval } from '#analysis/rates/binomial-interval.ts';
import { escapesOf } from '#api/features/analyses/analyses.service.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { gatesAsked } from '#api/features/gates/gates.service.ts';
import { queryOf } from '#api/features/week/links.ts';
import type { Actor } from '#api/platform/actor.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { stageNumber } from '#contracts/taxonomy.ts';
import { reportsByGatesPassed } from '../review.queries.ts';

const depths = [1, 2, 3];
const routesShown = 4;

const shareOf = (part: number, whole: number) =>
  whole === 0 ? notComputable('no_reports') : estimate(part / whole, binomialInterval(part, whole));

/** What slipped through in the week, and which gates leak over the thirteen weeks: as the page of the gates says it. */
export async function escapesPart(
  week: Asked,
  { reader, quarter, own, at }: { reader: Actor; quarter: Filter; own: Filter; at: Date },
): Promise<ReviewContent['escapes']> {
  const [escapes, passed, { gates, next }] = await Promise.all([
    escapesOf(week),
    reportsByGatesPassed(week, depths),
    gatesAsked(week.db, reader, { ...quarter, money: 'withEstimates' }, at),
  ]);
  const known = escapes.total.reports - escapes.withoutOrigin.reports;
  return {
    known,
    passed: depths.map((atLeast, place) => ({
      gates: atLeast,
      reports: passed[place]!,
      share: shareOf(passed[place]!, known),
      filter: queryOf({ ...own, gates: atLeast }),
    })),
    routes: escapes.cells
      .flatMap(({ origin, found, reports }) =>
        origin && stageNumber(origin) < stageNumber(found) ? [{ origin, found, reports }] : [],
      )
      .sort((a, b) => b.reports - a.reports)
      .slice(0, routesShown)
      .map((route) => ({
        ...route,
        share: shareOf(route.reports, known),
        filter: queryOf({ ...own, origin: [route.origin], found: [route.found] }),
      })),
    gates: gates.map(({ stage, foundHere, foundLater, effectiveness, matured }) => ({
      stage,
      foundHere,
      foundLater,
      effectiveness,
      matured,
    })),
    next,
  };
}
