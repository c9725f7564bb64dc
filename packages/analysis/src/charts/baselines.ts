import type { ChartOptions, LimitMode } from './chart.ts';

/** The phase of a point and the half-open range of points that its limits come from. */
export type Baseline = { phase: number; from: number; to: number };

/**
 * Which points set the limits of each point; never one of another phase.
 *
 * @throws RangeError when a phase starts at a key that is not there, or `points` is below 2
 */
export function baselines(keys: readonly string[], options: ChartOptions): Baseline[] {
  const { phaseStarts = [], limits = { mode: 'phase' } } = options;
  if (limits.mode !== 'phase' && !(limits.points >= 2)) {
    throw new RangeError(`points must be 2 or more, not ${limits.points}.`);
  }
  const starts = phaseStarts.map((key) => {
    const place = keys.indexOf(key);
    if (place < 0) throw new RangeError(`No point has the key ${key}.`);
    return place;
  });
  const borders = [...new Set([0, ...starts])].sort((a, b) => a - b);
  return borders.flatMap((from, phase) => {
    const to = borders[phase + 1] ?? keys.length;
    return Array.from({ length: to - from }, (_, place) => ({ phase, ...range(from, to, from + place, limits) }));
  });
}

function range(from: number, to: number, point: number, limits: LimitMode): { from: number; to: number } {
  if (limits.mode === 'phase') return { from, to };
  const { points } = limits;
  if (limits.mode === 'frozen' || point - from < points) return { from, to: Math.min(to, from + points) };
  return { from: point - points, to: point };
}
