import { type Chart, type ChartOptions, limitWidth, movingRangeDeviation, noChart } from './chart.ts';
import { drawChart, type FitBaseline } from './draw-chart.ts';

/** Failures, and what they are counted over: exposure (u), units inspected (p), 1 for equal periods (c). */
export type CountSample = { key: string; count: number; size: number };

/**
 * Control chart of counted faults: u (per exposure), c (per equal period), p (fraction of units, each faulty or not).
 *
 * Centre = Σ count / Σ size; standard deviation of point i sqrt(centre / size) for u and c, sqrt(p (1 - p) / size) for p;
 * limits at three of them. `corrected` multiplies them by Laney's dispersion, mean |z(i) - z(i-1)| / 1.128: with a large
 * volume the limits otherwise lie so close that ordinary weeks fall outside. It never narrows the limits.
 * Sources: ISO 7870-2:2013; Laney D.B. (2002) Quality Engineering 14:531-537 (from memory).
 *
 * @param samples in order of time; those without size are left out
 * @returns `no_production` when no sample has a size, `no_reports` when a baseline has no failure, `too_few` when a phase
 *   has fewer than two points
 */
export function attributeChart(
  kind: 'u' | 'c' | 'p',
  samples: readonly CountSample[],
  options: ChartOptions & { corrected?: boolean } = {},
): Chart {
  const sized = samples.filter(({ size }) => size > 0);
  if (sized.length === 0) return noChart(kind, 'no_production');
  const fit: FitBaseline<CountSample> = (baseline) => {
    const total = baseline.reduce((sum, { count }) => sum + count, 0);
    const centre = total / baseline.reduce((sum, { size }) => sum + size, 0);
    if (centre === 0 || (kind === 'p' && centre >= 1)) return null;
    const variance = kind === 'p' ? centre * (1 - centre) : centre;
    const score = ({ count, size }: CountSample): number => (count / size - centre) / Math.sqrt(variance / size);
    const dispersion = options.corrected ? Math.max(1, movingRangeDeviation(baseline.map(score))) : 1;
    return (sample) => {
      const half = limitWidth * dispersion * Math.sqrt(variance / sample.size);
      return {
        centre,
        low: centre > half ? centre - half : null,
        high: kind === 'p' && centre + half >= 1 ? null : centre + half,
        z: score(sample) / dispersion,
        dispersion,
      };
    };
  };
  return drawChart(kind, sized, ({ count, size }) => count / size, fit, options);
}
