import { gammaCdf } from '../numeric/gamma-distribution.ts';
import type { ChartKind, ChartReason } from './chart.ts';

/** Failures of one week (or other equal period) with its exposure, null where production was not reported. */
export type ChartPeriod = { key: string; failures: number; exposure: number | null };

/** Why this chart: said on the screen beside it. */
export type ChoiceReason =
  | 'rare_with_exposure'
  | 'rare_without_exposure'
  | 'enough_with_exposure'
  | 'enough_without_exposure'
  | 'units_fail_once';

export type ChartChoice =
  | {
      kind: ChartKind;
      because: ChoiceReason;
      /** use Laney's correction: the periods vary more than counting alone explains */
      corrected: boolean;
      facts: {
        periods: number;
        failuresPerPeriod: number;
        /** Σ (count - expected)² / expected over its degrees of freedom; 1 is usual; null where it was not asked */
        dispersionIndex: number | null;
        /** chance of so much dispersion by counting alone */
        dispersionP: number | null;
      };
      reason: null;
    }
  | { kind: null; reason: ChartReason };

/** With fewer failures per period on average, most periods are 0 or 1 and a chart of counts says little. Common practice. */
const rareBelow = 2;
const dispersionAlpha = 0.05;

/**
 * The chart that suits the data: gaps between faults (g with exposure, t with days only) when they are rare, else u with
 * exposure, c without, p where `unitsFailOnce` (sorting results). u, c and p are corrected for overdispersion when the
 * index of dispersion is significant at 5 %.
 * Sources: index of dispersion, Fisher R.A. (1925) Statistical Methods for Research Workers; the limit of two failures per
 * period is common practice, no source.
 */
export function chooseChart(periods: readonly ChartPeriod[], unitsFailOnce = false): ChartChoice {
  const failures = periods.reduce((sum, period) => sum + period.failures, 0);
  if (periods.length < 2) return { kind: null, reason: 'too_few' };
  if (failures === 0) return { kind: null, reason: 'no_reports' };
  const failuresPerPeriod = failures / periods.length;
  const known = periods.every(({ exposure }) => exposure !== null);
  const facts = { periods: periods.length, failuresPerPeriod, dispersionIndex: null, dispersionP: null };
  if (failuresPerPeriod < rareBelow && !unitsFailOnce) {
    const because = known ? 'rare_with_exposure' : 'rare_without_exposure';
    return { kind: known ? 'g' : 't', because, corrected: false, facts, reason: null };
  }
  const dispersion = dispersionOf(periods, failures, known, unitsFailOnce);
  const because = unitsFailOnce ? 'units_fail_once' : known ? 'enough_with_exposure' : 'enough_without_exposure';
  return {
    kind: unitsFailOnce ? 'p' : known ? 'u' : 'c',
    because,
    corrected: dispersion.dispersionP < dispersionAlpha,
    facts: { ...facts, ...dispersion },
    reason: null,
  };
}

function dispersionOf(periods: readonly ChartPeriod[], failures: number, known: boolean, unitsFailOnce: boolean) {
  const sized = periods
    .map((period) => ({ count: period.failures, size: known ? period.exposure! : 1 }))
    .filter(({ size }) => size > 0);
  const rate = failures / sized.reduce((sum, { size }) => sum + size, 0);
  const scale = unitsFailOnce ? 1 - rate : 1;
  const chiSquare = sized.reduce((sum, { count, size }) => sum + (count - rate * size) ** 2 / (rate * size * scale), 0);
  const freedom = Math.max(1, sized.length - 1);
  return { dispersionIndex: chiSquare / freedom, dispersionP: 1 - gammaCdf(chiSquare / 2, freedom / 2) };
}
