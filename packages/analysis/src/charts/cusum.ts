export type CusumPoint = {
  high: number;
  low: number;
  signal: 'up' | 'down' | null;
  /** first point of the rise that led here, the likely start of the change; null without a signal */
  since: number | null;
};

export type CusumDesign = {
  /** half of the shift to be found, in the unit of the values */
  slack: number;
  /** decision limit, in the unit of the values */
  limit: number;
};

/**
 * Tabular cumulative sum for small lasting shifts: high(i) = max(0, high(i-1) + x - target - slack), low likewise downwards;
 * a signal where one exceeds the limit.
 *
 * Sources: Page E.S. (1954) Biometrika 41:100-115; NIST/SEMATECH e-Handbook 6.3.2.3. Feed it the z of a chart with
 * target 0, or measured values. After a signal the sums go on until the caller starts a new phase.
 */
export function cusum(values: readonly number[], target: number, { slack, limit }: CusumDesign): CusumPoint[] {
  let [high, low, highSince, lowSince] = [0, 0, 0, 0];
  return values.map((value, place) => {
    if (high === 0) highSince = place;
    if (low === 0) lowSince = place;
    high = Math.max(0, high + value - target - slack);
    low = Math.max(0, low + target - slack - value);
    const signal = high > limit ? 'up' : low > limit ? 'down' : null;
    return { high, low, signal, since: signal === 'up' ? highSince : signal === 'down' ? lowSince : null };
  });
}
