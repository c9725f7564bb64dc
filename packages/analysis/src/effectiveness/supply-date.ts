import { addDays, type Day } from '../calendar/day.ts';
import { maturityAt } from './maturity-at.ts';

export type ExposureForecast = {
  /** first day still to come */
  from: Day;
  /** exposure to be expected on `from` and the days after it; repeated when it ends: one value, or seven for a week */
  perDay: readonly number[];
  /** fraction of the failures of a day's build reported after 0, 1, 2 … months; 1 at once when not given */
  maturityByMonth?: readonly number[];
};

const furthestDays = 20 * 366;

/**
 * The day at whose end production will have supplied an exposure, mature failures included.
 *
 * Mature exposure on day n = Σ over earlier days of the forecast × maturity at that age (linear between months).
 *
 * @param missing what is still needed, in the unit of the forecast; 0 or less gives the day before `from`
 * @returns null when it takes more than twenty years
 */
export function supplyDate(missing: number, { from, perDay, maturityByMonth }: ExposureForecast): Day | null {
  if (perDay.length === 0 || perDay.some((exposure) => !(exposure >= 0))) {
    throw new RangeError('perDay needs at least one exposure, each 0 or more.');
  }
  if (missing <= 0) return addDays(from, -1);
  const suppliedAfter = (days: number): number => {
    let sum = 0;
    for (let day = 0; day < days; day++) {
      sum += perDay[day % perDay.length]! * maturityAt(days - 1 - day, maturityByMonth);
    }
    return sum;
  };
  if (suppliedAfter(furthestDays) < missing) return null;
  let [tooFew, enough] = [0, furthestDays];
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (suppliedAfter(middle) >= missing) enough = middle;
    else tooFew = middle;
  }
  return addDays(from, enough - 1);
}
