/** Nodes and weights of an integral over one interval. */
export type Quadrature = { nodes: Float64Array; weights: Float64Array };

const cache = new Map<number, Quadrature>();

/** Nodes on -1 to 1: roots of the Legendre polynomial by Newton's method. */
function standard(count: number): Quadrature {
  const known = cache.get(count);
  if (known) return known;
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 0;
    for (let round = 0; round < 100; round++) {
      let [last, value] = [1, x];
      for (let k = 2; k <= count; k++) [last, value] = [value, ((2 * k - 1) * x * value - (k - 1) * last) / k];
      slope = (count * (x * value - last)) / (x * x - 1);
      const step = value / slope;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  const rule = { nodes, weights };
  cache.set(count, rule);
  return rule;
}

/**
 * Gauss-Legendre rule: ∫ f ≈ Σ weight × f(node), exact for polynomials up to degree 2 × count - 1.
 * Source: Abramowitz M. and Stegun I. (1964), 25.4.29 (from memory).
 *
 * @param count at least 2
 */
export function gaussLegendre(count: number, from: number, to: number): Quadrature {
  const { nodes, weights } = standard(count);
  const half = (to - from) / 2;
  return { nodes: nodes.map((x) => from + half * (x + 1)), weights: weights.map((weight) => weight * half) };
}
