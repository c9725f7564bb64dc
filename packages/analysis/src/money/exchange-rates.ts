/** One unit of `from` is worth `rate` units of `to` from `day` (YYYY-MM-DD) on, until a later rate. `rate` is a decimal. */
export type DatedRate = { from: string; to: string; day: string; rate: string };

/** The rate in force on a day: the latest one dated that day or before; null when there is none yet. */
export function rateAsOf(rates: readonly DatedRate[], from: string, to: string, day: string): DatedRate | null {
  let latest: DatedRate | null = null;
  for (const rate of rates) {
    const applies = rate.from === from && rate.to === to && rate.day <= day;
    if (applies && (latest === null || rate.day > latest.day)) latest = rate;
  }
  return latest;
}
