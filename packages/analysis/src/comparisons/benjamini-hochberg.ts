/**
 * Adjusted p-values that hold the false discovery rate over a family of tests: adjusted <= q calls the test a discovery.
 *
 * Step-up from the largest: min over j >= i of p(j) × m / j, at most 1.
 * Source: Benjamini Y. and Hochberg Y. (1995) J. R. Statist. Soc. B 57:289-300.
 *
 * @returns adjusted p-values in the order given
 */
export function benjaminiHochberg(pValues: readonly number[]): number[] {
  const order = pValues.map((_, place) => place).sort((a, b) => pValues[b]! - pValues[a]!);
  const adjusted = new Array<number>(pValues.length);
  let smallest = 1;
  order.forEach((place, index) => {
    smallest = Math.min(smallest, (pValues[place]! * pValues.length) / (pValues.length - index));
    adjusted[place] = smallest;
  });
  return adjusted;
}
