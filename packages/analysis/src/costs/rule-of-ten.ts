/** The stages whose main work is to check: receiving, lock and visual check, electrical test, finished-product test, and the field. */
const checks = [1, 5, 6, 8, 10];

/**
 * The "rule of ten": each check that a fault slips through multiplies its cost about tenfold. Common practice, no source: a
 * yardstick to show beside the plant's own escalation factors, never a measurement.
 *
 * @param base stage number that counts as 1 (1 to 10)
 * @param found stage number where the fault was found
 */
export const ruleOfTen = (base: number, found: number): { factor: number; basis: 'common_practice' } => ({
  factor: 10 ** (checks.filter((stage) => stage <= found).length - checks.filter((stage) => stage <= base).length),
  basis: 'common_practice',
});
