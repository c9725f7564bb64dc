/** Draws are cut back to about this many variates in all, so that thousands of near-equal bars stay affordable. */
const variateBudget = 1_000_000;
const fewestDraws = 200;

/**
 * Fraction of draws in which each bar is among the k largest.
 *
 * @param draws wanted; fewer (never under 200) when there are so many bars that they would not be affordable
 * @param draw fills one value per bar
 */
export function topFrequencies(bars: number, k: number, draws: number, draw: (values: Float64Array) => void): number[] {
  if (!(Number.isInteger(k) && k >= 1)) throw new RangeError(`k must be a whole number of 1 or more, not ${k}.`);
  if (bars <= k) return new Array<number>(bars).fill(1);
  const rounds = Math.min(draws, Math.max(fewestDraws, Math.floor(variateBudget / bars)));
  const values = new Float64Array(bars);
  const hits = new Float64Array(bars);
  const largest = new Float64Array(k);
  for (let round = 0; round < rounds; round++) {
    draw(values);
    keepLargest(values, largest);
    const threshold = largest[k - 1]!;
    for (let bar = 0; bar < bars; bar++) if (values[bar]! >= threshold) hits[bar]! += 1;
  }
  return Array.from(hits, (count) => count / rounds);
}

/** Fills `largest` with the largest values, in descending order. */
function keepLargest(values: Float64Array, largest: Float64Array): void {
  largest.fill(Number.NEGATIVE_INFINITY);
  const last = largest.length - 1;
  for (const value of values) {
    if (value <= largest[last]!) continue;
    let place = last;
    while (place > 0 && largest[place - 1]! < value) {
      largest[place] = largest[place - 1]!;
      place -= 1;
    }
    largest[place] = value;
  }
}

/** Bars further than this many standard deviations below the k-th are never seen above it in an affordable number of draws. */
const reach = 6;

/** Places of the bars worth drawing: those whose reach upward overlaps the reach downward of the k-th largest. */
export function contenders(bars: readonly { mean: number; deviation: number }[], k: number): number[] {
  const kth = bars.toSorted((a, b) => b.mean - a.mean)[k - 1];
  const floor = kth ? kth.mean - reach * kth.deviation : Number.NEGATIVE_INFINITY;
  return bars.flatMap((bar, place) => (bar.mean + reach * bar.deviation >= floor ? [place] : []));
}

/** Top-k probabilities of all bars when only contenders are drawn; the others get 0. */
export function topProbabilitiesOf(
  bars: readonly { mean: number; deviation: number }[],
  k: number,
  draws: number,
  variate: (place: number) => number,
): number[] {
  const drawn = contenders(bars, k);
  const frequencies = topFrequencies(drawn.length, k, draws, (values) => {
    for (let i = 0; i < drawn.length; i++) values[i] = variate(drawn[i]!);
  });
  const probabilities = new Array<number>(bars.length).fill(0);
  drawn.forEach((place, i) => {
    probabilities[place] = frequencies[i]!;
  });
  return probabilities;
}
