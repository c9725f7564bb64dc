import type { Random } from './random.ts';

/** Standard normal variate. Source: Marsaglia G. and Bray T.A. (1964) SIAM Review 6:260-264, polar method. */
export function normalVariate(random: Random): number {
  for (;;) {
    const x = 2 * random() - 1;
    const y = 2 * random() - 1;
    const square = x * x + y * y;
    if (square > 0 && square < 1) return x * Math.sqrt((-2 * Math.log(square)) / square);
  }
}

/**
 * Gamma variate with this shape (> 0) and scale 1.
 * Source: Marsaglia G. and Tsang W.W. (2000) ACM Trans. Math. Software 26:363-372; a shape below 1 is raised by one and
 * multiplied by U^(1/shape), as in their section 6.
 */
export function gammaVariate(shape: number, random: Random): number {
  if (shape < 1) return gammaVariate(shape + 1, random) * (1 - random()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normalVariate(random);
    const v = (1 + c * x) ** 3;
    if (v <= 0) continue;
    const u = 1 - random();
    if (Math.log(u) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}
