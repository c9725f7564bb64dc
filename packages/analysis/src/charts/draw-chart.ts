import { baselines } from './baselines.ts';
import { type Chart, type ChartKind, type ChartOptions, type ChartPhase, noChart } from './chart.ts';

/** Limits and scale that one baseline gives to one point. */
export type PointLimits = { centre: number; low: number | null; high: number | null; z: number; dispersion: number };

/** Fits a baseline and returns what it says of any point; null when it cannot (for example without a failure). */
export type FitBaseline<Sample> = (baseline: readonly Sample[]) => ((sample: Sample) => PointLimits) | null;

/** Puts a chart together from its samples: phases, baselines, limits. A phase needs two points in its baseline. */
export function drawChart<Sample extends { key: string }>(
  kind: ChartKind,
  samples: readonly Sample[],
  readValue: (sample: Sample) => number,
  fitBaseline: FitBaseline<Sample>,
  options: ChartOptions,
): Chart {
  if (samples.length < 2) return noChart(kind, 'too_few');
  const places = baselines(
    samples.map(({ key }) => key),
    options,
  );
  const fits = new Map<string, ReturnType<typeof fitBaseline>>();
  const points = [];
  const phases: ChartPhase[] = [];
  for (const [index, sample] of samples.entries()) {
    const { phase, from, to } = places[index]!;
    if (to - from < 2) return noChart(kind, 'too_few');
    const name = `${from}-${to}`;
    if (!fits.has(name)) fits.set(name, fitBaseline(samples.slice(from, to)));
    const limitsOf = fits.get(name);
    if (!limitsOf) return noChart(kind, 'no_reports');
    const { dispersion, ...limits } = limitsOf(sample);
    const inBaseline = index >= from && index < to;
    points.push({ key: sample.key, value: readValue(sample), ...limits, phase, inBaseline });
    const last = { phase, centre: limits.centre, dispersion, baselinePoints: to - from };
    if (phases.at(-1)?.phase === phase) phases[phases.length - 1] = { ...phases.at(-1)!, ...last };
    else phases.push({ fromKey: sample.key, ...last });
  }
  return { kind, points, phases, reason: null };
}
