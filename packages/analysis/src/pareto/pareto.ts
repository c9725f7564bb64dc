export type Bar = { key: string; value: number };

/** Shares are fractions of the total, null where the total is not positive or a bar is negative (a net credit). */
export type RankedBar = {
  key: string;
  value: number;
  /** 1 for the largest; equal values share the smaller rank */
  rank: number;
  share: number | null;
  cumulativeShare: number | null;
};

export type Pareto = {
  total: number;
  bars: RankedBar[];
  /** Everything beyond the bars shown, or null when nothing is left over */
  other: { bars: number; value: number; share: number | null } | null;
};

const byValueThenKey = (a: Bar, b: Bar): number => b.value - a.value || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);

/**
 * Pareto ranking: bars from the largest down, with share and cumulative share of the total, and the rest as one "other" bar.
 *
 * Equal values are ordered by key, so the same data always gives the same picture, and share a rank. The total is the
 * sum of all bars, shown or not. Source: Juran J.M. (1951) Quality Control Handbook, "vital few" (from memory).
 *
 * @param bars one value per key, in any one unit (reports, terminals, minor units)
 * @param options.show how many bars before the rest becomes "other"; all when absent
 */
export function pareto(bars: readonly Bar[], options: { show?: number } = {}): Pareto {
  const sorted = bars.toSorted(byValueThenKey);
  const total = sorted.reduce((sum, bar) => sum + bar.value, 0);
  const hasShares = total > 0 && sorted.at(-1)!.value >= 0;
  const share = (value: number): number | null => (hasShares ? value / total : null);

  let running = 0;
  let rank = 1;
  const ranked = sorted.map((bar, index) => {
    running += bar.value;
    if (index > 0 && bar.value !== sorted[index - 1]!.value) rank = index + 1;
    return { key: bar.key, value: bar.value, rank, share: share(bar.value), cumulativeShare: share(running) };
  });

  const shown = ranked.slice(0, options.show ?? ranked.length);
  const rest = ranked.slice(shown.length);
  const value = rest.reduce((sum, bar) => sum + bar.value, 0);
  return { total, bars: shown, other: rest.length ? { bars: rest.length, value, share: share(value) } : null };
}
