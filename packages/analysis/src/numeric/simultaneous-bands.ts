/**
 * Limits for several quantities that hold together in the wanted fraction of joint draws.
 *
 * The same tail is cut from every quantity, as large as leaves at least `confidence` of the draws wholly inside; skewness
 * and natural limits are kept. Source: Montiel Olea J.L. and Plagborg-Møller M. (2019) J. Applied Econometrics 34:1-17,
 * quantile-based sup-t band (from memory).
 *
 * @param draws one array per quantity, all of the same length; entry i of each belongs to joint draw i
 */
export function simultaneousBands(draws: readonly Float64Array[], confidence: number): { low: number; high: number }[] {
  const sorted = draws.map((values) => values.toSorted());
  const count = draws[0]?.length ?? 0;
  const depths = new Float64Array(count).fill(count);
  draws.forEach((values, quantity) => {
    const order = sorted[quantity]!;
    for (let i = 0; i < count; i++) {
      const below = lowerBound(order, values[i]!);
      const upTo = upperBound(order, values[i]!);
      depths[i] = Math.min(depths[i]!, upTo - 1, count - 1 - below);
    }
  });
  const cut = depths.toSorted()[Math.floor((1 - confidence) * count)] ?? 0;
  return sorted.map((order) => ({ low: order[cut]!, high: order[count - 1 - cut]! }));
}

/** How many values lie below the limit. */
const lowerBound = (sorted: Float64Array, limit: number): number => firstPlace(sorted, (value) => value >= limit);

/** How many values lie at or below the limit. */
const upperBound = (sorted: Float64Array, limit: number): number => firstPlace(sorted, (value) => value > limit);

function firstPlace(sorted: Float64Array, isBeyond: (value: number) => boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (isBeyond(sorted[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}
