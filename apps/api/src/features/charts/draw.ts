/** One chart of samples by any of the four kinds, with its patterns and cumulative sum. Pure. */
import { attributeChart } from '#analysis/charts/attribute-chart.ts';
import type { Chart, ChartOptions } from '#analysis/charts/chart.ts';
import { type CusumDesign, cusum } from '#analysis/charts/cusum.ts';
import { gChart, tChart } from '#analysis/charts/gap-charts.ts';
import type { ChartKind, Charts, RunRule } from '#contracts/charts.ts';
import type { Sample } from './samples.ts';

const million = 1_000_000;

export function draw(kind: ChartKind, samples: readonly Sample[], corrected: boolean, options: ChartOptions): Chart {
  if (kind === 'u' || kind === 'c') {
    const counted = samples.map(({ key, reports, terminals }) => ({
      key,
      count: reports,
      size: kind === 'u' ? (terminals ?? 0) / million : 1,
    }));
    return attributeChart(kind, counted, { ...options, corrected });
  }
  const gaps = samples.map(({ key, gap }) => ({ key, gap: gap! }));
  return kind === 'g' ? gChart(gaps, options) : tChart(gaps, options);
}

/** More faults, or faults closer together. */
export const isWorse = (kind: ChartKind, direction: 'up' | 'down' | null): boolean | null =>
  direction === null ? null : (direction === 'up') === (kind === 'u' || kind === 'c');

/** Points between false alarms of sets of rules, in control. Reference `4-we-rules-arl`; one point beyond three alone, 1 / 0.0027. */
const published: readonly { rules: readonly RunRule[]; every: number }[] = [
  { rules: ['sudden_jump'], every: 370 },
  { rules: ['sudden_jump', 'level_shift'], every: 153 },
  { rules: ['sudden_jump', 'moderate_shift', 'small_shift', 'level_shift'], every: 92 },
];
export function falseAlarmEvery(rules: readonly RunRule[], oneSide: 8 | 9): number | null {
  const asked = new Set(rules);
  const same = published.find((one) => one.rules.length === asked.size && one.rules.every((rule) => asked.has(rule)));
  return same && (oneSide === 8 || !asked.has('level_shift')) ? same.every : null;
}

type CusumShown = Extract<Charts['cusum'], { reason: null }>['points'];

/** The cumulative sum of the chart's own scores, begun anew in each phase. */
export function cusumOf(
  kind: ChartKind,
  { points }: Extract<Chart, { reason: null }>,
  design: CusumDesign,
): CusumShown {
  return [...Map.groupBy(points, ({ phase }) => phase).values()].flatMap((phase) =>
    cusum(
      phase.map(({ z }) => z),
      0,
      design,
    ).map(({ high, low, signal, since }, place) => ({
      key: phase[place]!.key,
      high,
      low,
      signal,
      worse: isWorse(kind, signal),
      sinceKey: since === null ? null : phase[since]!.key,
    })),
  );
}
