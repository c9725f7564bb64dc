import { defaultConfidence, type Estimate } from '../estimate.ts';
import { meanInterval } from '../numeric/mean-interval.ts';
import type { ScoredCase } from './scored-case.ts';

/**
 * Brier score over several classes: the mean over cases of Σ (probability - happened)². 0 is perfect, 2 the worst; with two
 * classes it is twice the score of one class. Interval by Student's t over the cases.
 * Source: Brier G.W. (1950) Monthly Weather Review 78:1-3.
 */
export const brierScore = (cases: readonly ScoredCase[], confidence = defaultConfidence): Estimate =>
  meanInterval(
    cases.map(({ probabilities, outcome }) =>
      probabilities.reduce((sum, p, place) => sum + (p - (place === outcome ? 1 : 0)) ** 2, 0),
    ),
    confidence,
  );
