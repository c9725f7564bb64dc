import { betaCdf } from '../numeric/beta-distribution.ts';
import { gammaCdf } from '../numeric/gamma-distribution.ts';
import { fitGammaPrior } from '../shrinkage/fit-gamma-prior.ts';
import type { GammaPart, ObservedExpected } from '../shrinkage/gamma-mixture.ts';

export type UsualVariation = {
  /** how the true ratios of ordinary members vary; null where there are too few to learn it from */
  usual: GammaPart | null;
  /** the same for shrinking, with a wide part for members that are out of the ordinary */
  parts: GammaPart[];
};

/** With fewer members there is nothing to learn how they vary from. */
const fewest = 5;
/** Two numbers are learned; more members than this only take time. */
const most = 1000;
/** A member is out of the ordinary, and not learned from, when so large a count or a larger one is rarer than this. */
const outside = 0.0005;
/** Left out of the first fit, so that they do not hide one another: the highest ratios. */
const trimmed = 0.1;
const rounds = 5;
const vague: GammaPart = { weight: 1, shape: 1, rate: 1 };

/** P(X >= observed) where the true ratio itself varies as gamma: negative binomial; Poisson without a prior. */
export function chanceOfSoMany({ observed, expected }: ObservedExpected, usual: GammaPart | null): number {
  if (observed === 0) return 1;
  if (!usual) return gammaCdf(expected, observed);
  return betaCdf(expected / (usual.rate + expected), observed, usual.shape);
}

/**
 * How much the members of a dimension usually differ, learned without those that are out of the ordinary, so that a few bad
 * ones do not make themselves usual.
 *
 * Gamma-Poisson fit without the tenth of the highest ratios, then again and again with all members but those whose upper tail
 * is below 0.05 %. Both numbers were chosen by simulation, so that false signals stay near what is promised in dimensions of
 * ten members too.
 * Sources: Efron B. (2004) J. Am. Statist. Assoc. 99:96-104 for learning the null from the bulk; the mixture of a usual and a
 * wide part as in DuMouchel W. (1999) The American Statistician 53:177-190 (both from memory).
 *
 * @param members expected above 0, those without failures too
 */
export function usualVariation(members: readonly ObservedExpected[]): UsualVariation {
  if (members.length < fewest) return { usual: null, parts: [fitGammaPrior(members) ?? vague] };
  const step = Math.max(1, members.length / most);
  const learned = Array.from({ length: Math.floor(members.length / step) }, (_, i) => members[Math.floor(i * step)]!);
  const byRatio = learned.toSorted((a, b) => b.observed / b.expected - a.observed / a.expected);
  let left = byRatio.slice(Math.ceil(trimmed * learned.length));
  let usual = fitGammaPrior(left) ?? fitGammaPrior(learned);
  if (!usual) return { usual: null, parts: [vague] };
  for (let round = 0; round < rounds; round++) {
    const prior: GammaPart = usual;
    const before = left.length;
    left = learned.filter((member) => chanceOfSoMany(member, prior) >= outside);
    usual = fitGammaPrior(left) ?? prior;
    if (left.length === before) break;
  }
  const wide = Math.max(1, learned.length - left.length) / learned.length;
  return {
    usual,
    parts: [
      { ...usual, weight: 1 - wide },
      { ...vague, weight: wide },
    ],
  };
}
