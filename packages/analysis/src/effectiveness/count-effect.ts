import { addDays, type Day } from '../calendar/day.ts';
import type { CountedExposure } from '../rates/rate-ratio.ts';
import type { Look } from './judge-over-time.ts';
import { type BuiltExposure, matureExposure } from './mature-exposure.ts';
import { maturityAt } from './maturity-at.ts';
import type { DatedReports } from './reporting-delay.ts';

/** What was built and what failed, within the scope of a fix, by day. */
export type EffectData = {
  builds: readonly { day: Day; exposure: number }[];
  /** `builtOn` the day found where the day built is not known */
  reports: readonly DatedReports[];
  /** see `reportingDelay`; null where failures are found at once */
  maturity: readonly number[] | null;
};

/** Days since 1970; quicker than a calendar where there are thousands of them. */
const numberOf = (day: Day): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000;

/**
 * Failures of the builds from one day to before another, as known at the end of a day, and the exposure that they stand
 * against: what was built, each day weighed by how much of its failures should be reported by then.
 *
 * @returns exposure null when nothing was built
 */
export function countEffect(
  { builds, reports, maturity }: EffectData,
  { from, to }: { from: Day; to: Day },
  asOf: Day,
): CountedExposure {
  const failures = reports
    .filter(({ builtOn, foundOn }) => builtOn >= from && builtOn < to && foundOn <= asOf)
    .reduce((sum, { reports }) => sum + reports, 0);
  const end = numberOf(asOf);
  const built: BuiltExposure[] = builds
    .filter(({ day }) => day >= from && day < to && day <= asOf)
    .map(({ day, exposure }) => ({ exposure, maturity: maturityAt(end - numberOf(day), maturity) }));
  return { failures, exposure: matureExposure(built) || null };
}

/** The counts since the clean point at the end of every seventh day and of the last. */
export function looksSince(data: EffectData, cleanPoint: Day, today: Day): Look[] {
  const days: Day[] = [];
  for (let day = addDays(cleanPoint, 6); day < today; day = addDays(day, 7)) days.push(day);
  if (cleanPoint <= today) days.push(today);
  return days.map((day) => ({ day, after: countEffect(data, { from: cleanPoint, to: addDays(day, 1) }, day) }));
}
