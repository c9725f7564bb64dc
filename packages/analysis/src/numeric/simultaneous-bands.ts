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
  const depths = new Float64Array(count).fill(count - 1);
  draws.forEach((values, quantity) => {
    const order = sorted[quantity]!;
    if (order[0] === order[count - 1]) return;
    for (let i = 0; i < count; i++) {
      const value = values[i]!;
      const place = placeOf(order, value);
      let last = place;
      while (last + 1 < count && order[last + 1] === value) last += 1;
      depths[i] = Math.min(depths[i]!, last, count - 1 - place);
    }
  });
  const cut = depths.toSorted()[Math.floor((1 - confidence) * count)] ?? 0;
  return sorted.map((order) => ({ low: order[cut]!, high: order[count - 1 - cut]! }));
}

/** First place of a value that the sorted array holds. */
function placeOf(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
