import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { normalQuantile } from '../numeric/normal-distribution.ts';
import { requireConfidence, requireCount } from '../numeric/require-count.ts';
import { binomialInterval } from '../rates/binomial-interval.ts';

/**
 * Cohen's kappa: agreement of two judges beyond chance, (po - pe) / (1 - pe), with its large-sample interval.
 *
 * Sources: Cohen J. (1960) Educational and Psychological Measurement 20:37-46; standard error of Fleiss J.L., Cohen J. and
 * Everitt B.S. (1969) Psychological Bulletin 72:323-327. The interval is cut at 1 and rough under some fifty pairs.
 *
 * @param table counts, table[first judge's class][second judge's class], square
 * @returns observed agreement with its Clopper-Pearson interval, and kappa: `no_reports` without pairs, `not_finite` when both
 *   judges used one and the same class only
 */
export function cohensKappa(
  table: readonly (readonly number[])[],
  confidence = defaultConfidence,
): { observed: Estimate; kappa: Estimate; standardError: number | null } {
  requireConfidence(confidence);
  for (const count of table.flat()) requireCount('count', count);
  const pairs = table.flat().reduce((sum, count) => sum + count, 0);
  if (pairs === 0) {
    return { observed: notComputable('no_reports'), kappa: notComputable('no_reports'), standardError: null };
  }
  const rows = table.map((row) => row.reduce((sum, count) => sum + count, 0) / pairs);
  const columns = table.map((_, column) => table.reduce((sum, row) => sum + row[column]!, 0) / pairs);
  const agreed = table.reduce((sum, row, place) => sum + row[place]!, 0);
  const observed = estimate(agreed / pairs, binomialInterval(agreed, pairs, confidence));
  const byChance = rows.reduce((sum, row, place) => sum + row * columns[place]!, 0);
  if (byChance === 1) return { observed, kappa: notComputable('not_finite'), standardError: null };

  const kappa = (agreed / pairs - byChance) / (1 - byChance);
  let spread = -((kappa - byChance * (1 - kappa)) ** 2);
  table.forEach((row, i) => {
    row.forEach((count, j) => {
      const weight = (i === j ? 1 : 0) - (columns[i]! + rows[j]!) * (1 - kappa);
      spread += (count / pairs) * weight ** 2;
    });
  });
  const standardError = Math.sqrt(Math.max(0, spread) / pairs) / (1 - byChance);
  const half = -normalQuantile((1 - confidence) / 2) * standardError;
  return {
    observed,
    kappa: estimate(kappa, { low: kappa - half, high: Math.min(1, kappa + half), confidence }),
    standardError,
  };
}
