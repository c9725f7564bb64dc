import { type Day, daysBetween } from '../calendar/day.ts';

export type DatedReports = { builtOn: Day; foundOn: Day; reports: number };

const daysPerMonth = 365.25 / 12;

/**
 * Fraction of the reports on a build that has come in by each whole month of its age, from reports seen until today.
 *
 * Young builds can have shown short delays only (right truncation), so the distribution is built backwards:
 * F(a) = Π over k > a of 1 − n(k) / R(k), n(k) reports with a delay of k days, R(k) those with a delay of at most k days on builds at
 * least k days old. This is the chain ladder with a row for each day of building. Beyond the longest delay seen nothing is
 * expected: there is no tail.
 * Sources: Lynden-Bell D. (1971) Monthly Notices of the Royal Astronomical Society 155:95-118; Kalbfleisch J.D. and Lawless J.F. (1989)
 * JASA 84:360-372 (from memory).
 *
 * @returns fractions for ages 0, 1, 2 … months, the last one 1; null when there is no report
 */
export function reportingDelay(reports: readonly DatedReports[], today: Day): number[] | null {
  const seen = reports
    .filter(({ builtOn, foundOn }) => builtOn <= foundOn && foundOn <= today)
    .map(({ builtOn, foundOn, reports }) => ({
      delay: daysBetween(builtOn, foundOn),
      age: daysBetween(builtOn, today),
      reports,
    }));
  if (seen.length === 0) return null;
  const longest = Math.max(...seen.map(({ delay }) => delay));
  const withDelay = new Float64Array(longest + 2);
  const atRisk = new Float64Array(longest + 2);
  for (const { delay, age, reports } of seen) {
    withDelay[delay]! += reports;
    atRisk[delay]! += reports;
    atRisk[Math.min(age, longest) + 1]! -= reports;
  }
  for (let day = 1; day <= longest; day++) atRisk[day]! += atRisk[day - 1]!;

  const byDay = new Float64Array(longest + 1).fill(1);
  for (let day = longest; day > 0; day--) {
    const kept = atRisk[day]! > 0 ? 1 - withDelay[day]! / atRisk[day]! : 1;
    byDay[day - 1] = byDay[day]! * kept;
  }
  const months = Math.ceil(longest / daysPerMonth);
  return Array.from({ length: months + 1 }, (_, month) => byDay[Math.round(month * daysPerMonth)] ?? 1);
}
