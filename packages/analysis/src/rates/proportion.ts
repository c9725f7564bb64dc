import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { binomialInterval } from './binomial-interval.ts';

/** A share of cases, count / all, with its Clopper-Pearson interval; `no_reports` where there are none. */
export const proportion = (count: number, all: number, confidence = defaultConfidence): Estimate =>
  all === 0 ? notComputable('no_reports') : estimate(count / all, binomialInterval(count, all, confidence));
