import { type Chart, type ChartOptions, limitWidth, movingRangeDeviation } from './chart.ts';
import { drawChart } from './draw-chart.ts';

/**
 * Control chart of single measured values: mean ± 3 × mean moving range / 1.128.
 *
 * Sources: ISO 7870-2:2013; NIST/SEMATECH e-Handbook 6.3.2.2. Values should be near normal.
 *
 * @returns `too_few` with fewer than two points in a phase, `no_reports` when all points of a baseline are equal
 */
export function individualsChart(
  samples: readonly { key: string; value: number }[],
  options: ChartOptions = {},
): Chart {
  return drawChart(
    'individuals',
    samples,
    ({ value }) => value,
    (baseline) => {
      const centre = baseline.reduce((sum, { value }) => sum + value, 0) / baseline.length;
      const deviation = movingRangeDeviation(baseline.map(({ value }) => value));
      if (deviation === 0) return null;
      const half = limitWidth * deviation;
      const shared = { centre, low: centre - half, high: centre + half, dispersion: 1 };
      return ({ value }) => ({ ...shared, z: (value - centre) / deviation });
    },
    options,
  );
}
