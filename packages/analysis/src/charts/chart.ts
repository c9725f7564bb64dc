/** `u`, `c`, `p`: counts per exposure, per equal period, per units inspected; `g`, `t`: gaps between rare faults. */
export type ChartKind = 'u' | 'c' | 'p' | 'individuals' | 'g' | 't';

/** Why no chart can be drawn or no limit is given. */
export type ChartReason = 'too_few' | 'no_production' | 'no_reports' | 'not_finite';

export type ChartPoint = {
  key: string;
  /** in the unit of the chart: a rate, count, fraction, measured value, or gap */
  value: number;
  centre: number;
  /** null: no limit on this side, because it would lie below 0 */
  low: number | null;
  high: number | null;
  /** distance from the centre in the chart's own standard deviations; run rules read it */
  z: number;
  /** 0 for the first phase */
  phase: number;
  /** used to set the limits of its phase */
  inBaseline: boolean;
};

export type ChartPhase = {
  phase: number;
  fromKey: string;
  centre: number;
  /** standard deviation over the one expected from counting alone; 1 where no correction is made */
  dispersion: number;
  baselinePoints: number;
};

/** Limits lie this many standard deviations from the centre. Source: Shewhart W.A. (1931). */
export const limitWidth = 3;

/**
 * How limits are set. `phase`: from every point of the phase; `frozen`: from its first `points`, later points do not move
 * them; `rolling`: for each point from the `points` before it (for the first ones, from the first `points`).
 */
export type LimitMode = { mode: 'phase' } | { mode: 'frozen' | 'rolling'; points: number };

export type ChartOptions = {
  /** keys of the first point of each later phase, for example the first week after an action */
  phaseStarts?: readonly string[];
  /** from every point of the phase unless given */
  limits?: LimitMode;
};

export type Chart =
  | { kind: ChartKind; points: ChartPoint[]; phases: ChartPhase[]; reason: null }
  | { kind: ChartKind; points: null; phases: null; reason: ChartReason };

export const noChart = (kind: ChartKind, reason: ChartReason): Chart => ({ kind, points: null, phases: null, reason });

/** Mean moving range of two over the standard deviation, d2(2), rounded as it is printed everywhere. */
const rangeOfTwo = 1.128;

/** Standard deviation from successive differences: mean |x(i) - x(i-1)| / 1.128; slow changes do not inflate it. */
export function movingRangeDeviation(values: readonly number[]): number {
  let sum = 0;
  for (let i = 1; i < values.length; i++) sum += Math.abs(values[i]! - values[i - 1]!);
  return sum / (values.length - 1) / rangeOfTwo;
}
