import { normalQuantile, normalUpperTail } from '../numeric/normal-distribution.ts';
import { type Chart, type ChartOptions, limitWidth } from './chart.ts';
import { drawChart, type FitBaseline } from './draw-chart.ts';

/** From one failure to the next: good terminals or units between them (g), or days (t). Small gaps are bad. */
export type Gap = { key: string; gap: number };

const tail = normalUpperTail(limitWidth);

/** Geometric number of good ones before a fault; q is the chance that one is good. Scores are normal, by mid-probability. */
function probabilityLimits(mean: number) {
  const q = mean / (mean + 1);
  /** the number above which, the half of its own mass included, this probability lies */
  const numberWithAbove = (above: number): number => Math.log((2 * above) / (1 + q)) / Math.log(q);
  const low = numberWithAbove(1 - tail);
  const score = (gap: number): number => {
    const above = (q ** gap * (1 + q)) / 2;
    return above < 0.5 ? -normalQuantile(above) : normalQuantile(1 - above);
  };
  return { low: low > 0 ? low : null, high: numberWithAbove(tail), score };
}

/**
 * g chart: how many good ones lie between rare faults.
 *
 * `probability` limits cut 0.00135 from each tail of the geometric distribution and give normal scores, so that too short gaps
 * are seen too; `three_sigma` limits are mean ± 3 sqrt(mean (mean + 1)), whose lower limit is never above 0.
 * Source: Benneyan J.C. (2001) Health Care Management Science 4:305-318 (from memory).
 *
 * @param gaps in order of time, whole numbers
 * @returns `too_few` with fewer than two gaps in a phase, `no_reports` when all gaps of a baseline are 0
 */
export function gChart(
  gaps: readonly Gap[],
  options: ChartOptions & { limitsBy?: 'probability' | 'three_sigma' } = {},
): Chart {
  const fit: FitBaseline<Gap> = (baseline) => {
    const mean = baseline.reduce((sum, { gap }) => sum + gap, 0) / baseline.length;
    if (mean === 0) return null;
    const deviation = Math.sqrt(mean * (mean + 1));
    const { score, ...limits } =
      options.limitsBy === 'three_sigma'
        ? { low: null, high: mean + limitWidth * deviation, score: (gap: number) => (gap - mean) / deviation }
        : probabilityLimits(mean);
    return ({ gap }) => ({ centre: mean, ...limits, z: score(gap), dispersion: 1 });
  };
  return drawChart('g', gaps, ({ gap }) => gap, fit, options);
}

/** Exponential times raised to this power are nearly normal. */
const power = 3.6;
/** 3 / 1.128 as printed; limits lie this many mean moving ranges from the mean. */
const rangesToLimit = 2.66;

/**
 * t chart: days between rare faults, where no exposure is known; y = t^(1/3.6), mean ± 2.66 × mean moving range, raised back.
 *
 * Source: Nelson L.S. (1994) J. Quality Technology 26:239-240 (from memory). A single short gap can hardly fall below the
 * lower limit: watch the run rules.
 *
 * @param gaps in order of time, days, 0 or more
 * @returns `too_few` with fewer than two gaps in a phase, `no_reports` when all gaps of a baseline are equal
 */
export function tChart(gaps: readonly Gap[], options: ChartOptions = {}): Chart {
  const fit: FitBaseline<Gap> = (baseline) => {
    const values = baseline.map(({ gap }) => gap ** (1 / power));
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    let ranges = 0;
    for (let i = 1; i < values.length; i++) ranges += Math.abs(values[i]! - values[i - 1]!);
    const half = (rangesToLimit * ranges) / (values.length - 1);
    if (half === 0) return null;
    const shared = {
      centre: mean ** power,
      low: mean > half ? (mean - half) ** power : null,
      high: (mean + half) ** power,
      dispersion: 1,
    };
    return ({ gap }) => ({ ...shared, z: (gap ** (1 / power) - mean) / (half / limitWidth) });
  };
  return drawChart('t', gaps, ({ gap }) => gap, fit, options);
}
