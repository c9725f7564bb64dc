export type Moments = { n: number; mean: number; deviation: number };

/** Size, mean and standard deviation (n - 1) of a sample; a deviation of 0 with fewer than two values. */
export function moments(values: readonly number[]): Moments {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { n, mean, deviation: n < 2 ? 0 : Math.sqrt(squares / (n - 1)) };
}
