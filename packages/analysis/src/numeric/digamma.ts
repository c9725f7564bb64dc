/**
 * Derivative of ln Γ(x) for x > 0: the recurrence up to 10, then the asymptotic series.
 * Source: Abramowitz M. and Stegun I. (1964) Handbook of Mathematical Functions, 6.3.5 and 6.3.18 (from memory).
 */
export function digamma(x: number): number {
  let sum = 0;
  let y = x;
  for (; y < 10; y += 1) sum -= 1 / y;
  const square = 1 / (y * y);
  const series = square * (1 / 12 - square * (1 / 120 - square * (1 / 252 - square * (1 / 240 - square / 132))));
  return sum + Math.log(y) - 1 / (2 * y) - series;
}
