/** Who surely belongs to the top k, and who might: the answer above the picture. Pure. */
import type { ParetoBar } from '#contracts/analyses.ts';

/** From here on a bar counts as sure; from `possible` on as a candidate. */
const sure = 0.95;
const possible = 0.05;

export interface Verdict<Bar> {
  readonly sure: readonly Bar[];
  readonly open: readonly Bar[];
}

export const verdictOf = <Bar extends Pick<ParetoBar, 'topProbability'>>(bars: readonly Bar[]): Verdict<Bar> => ({
  sure: bars.filter(({ topProbability }) => topProbability !== null && topProbability >= sure),
  open: bars.filter(
    ({ topProbability }) => topProbability !== null && topProbability < sure && topProbability >= possible,
  ),
});
