export type InspectionChoice = {
  /** fraction faulty from which inspecting every item is cheaper; above 1 it never is */
  breakEven: number;
  inspect: 'none' | 'every_item';
  /** expected cost per item, in the unit of the costs */
  costOfNone: number;
  costOfEvery: number;
};

/**
 * Inspect every item or none: which costs less at a stable fraction faulty. Anything between the two costs more than the
 * better of them.
 *
 * Every item when fraction > k1 / (e k2), k1 the cost to inspect one, k2 the cost of passing a faulty one, e the detection.
 * Source: Deming W.E. (1986) Out of the Crisis, chapter 15 (from memory); with e < 1 by the same argument.
 *
 * @param fraction faulty on arrival, 0 to 1
 * @param detection chance that inspection finds a faulty item, above 0 to 1
 */
export function inspectionBreakEven(
  fraction: number,
  costs: { inspectOne: number; passOne: number },
  detection = 1,
): InspectionChoice {
  const breakEven = costs.inspectOne / (detection * costs.passOne);
  return {
    breakEven,
    inspect: fraction > breakEven ? 'every_item' : 'none',
    costOfNone: fraction * costs.passOne,
    costOfEvery: costs.inspectOne + fraction * (1 - detection) * costs.passOne,
  };
}
