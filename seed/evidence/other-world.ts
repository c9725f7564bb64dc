import { normalVariate } from '#analysis/numeric/variates.ts';
import { type CauseName, causes, type PerCause, perCause } from '#analysis/suggestion/causes.ts';
import { type FindingPrior, findingPriors } from '#analysis/suggestion/priors.ts';
import type { Answer } from '#contracts/finding-catalogue.ts';
import type { Dice } from '../random.ts';

const logit = (p: number) => Math.log(p / (1 - p));
const expit = (x: number) => 1 / (1 + Math.exp(-x));

/** How a finding really comes about in the invented group. */
export interface TrueFinding extends FindingPrior {
  really: PerCause;
}

/** The invented group is another world than the engineers' prior: each P(yes | cause) is drawn towards one half and moved by chance. */
export const trueFindings = (dice: Dice): TrueFinding[] =>
  findingPriors.map((prior) => ({
    ...prior,
    really: perCause((cause) => expit(0.85 * logit(prior.yes[cause]) + 0.5 * normalVariate(dice.next))),
  }));

export const isCause = (word: string): word is CauseName => causes.some((cause) => cause === word);

/** Findings of one case lean the same way within a group, so they depend on each other. */
export function leaningOf(dice: Dice): (group: string) => number {
  const leaning = new Map<string, number>();
  return (group) => {
    const known = leaning.get(group) ?? 0.9 * normalVariate(dice.next);
    leaning.set(group, known);
    return known;
  };
}

export function answerOf(
  { really, group }: TrueFinding,
  cause: CauseName,
  leaning: (group: string) => number,
  dice: Dice,
): Answer {
  if (dice.chance(0.05)) return 'could_not_tell';
  return dice.chance(expit(logit(really[cause]) + leaning(group))) ? 'yes' : 'no';
}
