import { periodDays } from '#analysis/calendar/period.ts';
import { addMonths } from '#analysis/maturity/triangle.ts';
import type { MonthUnits } from '#api/features/analyses/analyses.service.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { monthsOf } from '#api/features/analyses/months.ts';
import { type Pattern, reportedAt } from '#api/features/maturity/pattern.ts';
import { monthOf, monthsBetween } from '#api/features/maturity/window.rules.ts';
import type { Gates } from '#contracts/gates.ts';
import type { FieldOrigin } from './gates.queries.ts';

/** With less than this share reported, what is still to come would be a guess. */
const least = 0.05;

/** Each month of the period with what was built in it; by its days where no production was reported at all. */
function weights({ period }: Pick<Asked, 'period'>, units: readonly MonthUnits[]): { month: string; weight: number }[] {
  const reported = units.some(({ units: built }) => built > 0);
  return monthsOf(period).map((part) => {
    const month = monthOf(part.from);
    const built = units.reduce((sum, row) => sum + (row.month === month ? row.units : 0), 0);
    return { month, weight: reported ? built : periodDays(part) };
  });
}

/**
 * Share of the field faults of what was built in the period that is reported by `until` with a build day: the pattern of delay over
 * the months of building by what was built in each, lowered by the share of field reports that have no build day.
 */
export function fieldMaturity(
  asked: Pick<Asked, 'period'>,
  { byAge, reports }: Pattern,
  options: { units: readonly MonthUnits[]; field: readonly FieldOrigin[]; until: string },
): Gates['maturity'] {
  const { units, field, until } = options;
  const dated = field.reduce((sum, row) => sum + row.dated, 0);
  const undated = field.reduce((sum, row) => sum + row.undated, 0);
  const head = { until, pattern: reports, withBuildDate: dated, withoutBuildDate: undated };
  if (byAge === null) return { ...head, reported: null, reason: 'too_few' };
  const last = addMonths(monthOf(until), -1);
  const parts = weights(asked, units);
  const built = parts.reduce((sum, { weight }) => sum + weight, 0);
  const seen = parts.reduce(
    (sum, { month, weight }) => sum + weight * reportedAt(byAge, monthsBetween(month, last)),
    0,
  );
  const known = dated + undated === 0 ? 1 : dated / (dated + undated);
  const reported = (seen / built) * known;
  return reported < least ? { ...head, reported: null, reason: 'too_few' } : { ...head, reported, reason: null };
}
