import { poissonVariate } from '../numeric/poisson-variate.ts';
import { type Random, seededRandom } from '../numeric/random.ts';
import { gammaVariate } from '../numeric/variates.ts';

export type MatrixCounts = {
  /** independent reports, counts[origin][found], square; the last stage is the field */
  counts: readonly (readonly number[])[];
  /** fraction of the field faults of this period already reported, above 0 to 1 */
  fieldMaturity: number;
  /** places of the gates that exist; all unless given. Others find nothing */
  gates?: readonly number[];
};

export type GateCounts = {
  found: number;
  /** made here or before, found later, the field as reported so far */
  later: number;
  /** field faults made here or before that are still to be reported, expected */
  toCome: number;
};

export const gateCounts = ({ counts, fieldMaturity }: MatrixCounts): GateCounts[] => {
  const field = counts.length - 1;
  return Array.from({ length: field }, (_, gate) => {
    const made = counts.slice(0, gate + 1);
    const found = made.reduce((sum, row) => sum + row[gate]!, 0);
    const later = made.reduce((sum, row) => sum + row.slice(gate + 1).reduce((a, b) => a + b, 0), 0);
    const inField = made.reduce((sum, row) => sum + row[field]!, 0);
    return { found, later, toCome: (inField * (1 - fieldMaturity)) / fieldMaturity };
  });
};

export type EffectivenessDraw = { effectiveness: number[]; present: number[] };

/**
 * Joint draws of every gate's effectiveness and of the faults present at it.
 *
 * Field faults to come, per origin: Poisson(Gamma(seen + 1/(2 S)) × (1 - m) / m) (Jeffreys prior over the S origins together);
 * effectiveness ~ Beta(found + 1/2, later + to come + 1/2); faults present ~ Gamma(found + later + 1/2) + to come.
 * Source: Jeffreys prior as in Brown L.D., Cai T.T. and DasGupta A. (2001) Statistical Science 16:101-133.
 *
 * @throws RangeError when fieldMaturity is not above 0 to 1
 */
export function drawEffectiveness(matrix: MatrixCounts, seed: number, draws: number): EffectivenessDraw[] {
  const { counts, fieldMaturity, gates } = matrix;
  if (!(fieldMaturity > 0 && fieldMaturity <= 1)) {
    throw new RangeError(`fieldMaturity must be above 0 and at most 1, not ${fieldMaturity}.`);
  }
  const random = seededRandom(seed);
  const perGate = gateCounts(matrix);
  const field = counts.length - 1;
  const exists = perGate.map((_, gate) => gates?.includes(gate) ?? true);
  return Array.from({ length: draws }, () => {
    let toCome = 0;
    const present: number[] = [];
    const effectiveness = perGate.map(({ found, later }, gate) => {
      toCome += drawToCome(counts[gate]![field]!, field, fieldMaturity, random);
      present.push(gammaVariate(found + later + 0.5, random) + toCome);
      if (!exists[gate]) return 0;
      const caught = gammaVariate(found + 0.5, random);
      return caught / (caught + gammaVariate(later + toCome + 0.5, random));
    });
    return { effectiveness, present };
  });
}

const drawToCome = (seen: number, origins: number, maturity: number, random: Random): number =>
  maturity === 1
    ? 0
    : poissonVariate((gammaVariate(seen + 1 / (2 * origins), random) * (1 - maturity)) / maturity, random);
