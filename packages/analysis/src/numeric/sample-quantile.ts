/**
 * Quantile of a sample sorted in ascending order, linear between order statistics.
 * Source: Hyndman R.J. and Fan Y. (1996) The American Statistician 50:361-365, definition 7.
 */
export function sampleQuantile(sorted: Float64Array, probability: number): number {
  const place = probability * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (place - below) * (high - low);
}
