/** What was built in one month (or on one day) and the fraction of its failures that should have been reported by now. */
export type BuiltExposure = { exposure: number; maturity: number };

/**
 * Exposure that counts where failures come late, as from the field: Σ exposure × maturity, in the unit of the exposure.
 *
 * A build whose failures are reported to the fraction m so far shows on average rate × exposure × m failures, as an exposure
 * of that size would at once; used both before and after a fix, young builds no longer look better than old ones.
 * Source: exposure times reported fraction, the denominator of the Cape Cod method: Stanard J.N. (1985) Proc. Casualty
 * Actuarial Society 72:124-148 (from memory).
 *
 * @param builds maturity 0 to 1 (see `maturity/`)
 * @throws RangeError when a maturity is not 0 to 1
 */
export function matureExposure(builds: readonly BuiltExposure[]): number {
  return builds.reduce((sum, { exposure, maturity }) => {
    if (!(maturity >= 0 && maturity <= 1)) throw new RangeError(`maturity must be 0 to 1, not ${maturity}.`);
    return sum + exposure * maturity;
  }, 0);
}
