import { describe, expect, it } from 'vitest';
import type { Pareto, ParetoBar } from '#contracts/analyses.ts';
import { causeMarks } from '#web/app/theme.ts';
import { paretoConfig } from './pareto-config.ts';

const interval = (low: number, high: number) => ({ low, high, confidence: 0.95 });
const bar = (key: string, reports: number, share: number, cumulativeShare: number): ParetoBar => ({
  key,
  label: key,
  reports,
  terminals: reports,
  bookedMinor: 100 * reports,
  estimateMinor: 10 * reports,
  value: reports,
  reason: null,
  interval: interval(reports - 1, reports + 1),
  share,
  shareInterval: interval(share - 0.1, share + 0.1),
  cumulativeShare,
  topProbability: 1,
  rate: { value: null, interval: null, reason: 'no_production' },
  previous: 2 * reports,
  change: null,
});
const pareto: Pareto = {
  period: { from: '2026-03-16', to: '2026-06-15' },
  plants: [],
  currency: 'EUR',
  rates: [],
  withoutRate: [],
  dimension: 'cause',
  measure: 'reports',
  top: 3,
  compared: { from: '2025-12-15', to: '2026-03-16' },
  bars: [bar('tooling', 6, 0.6, 0.6), bar('handling', 3, 0.3, 0.9)],
  other: {
    bars: 1,
    value: 1,
    share: 0.1,
    except: ['tooling', 'handling'],
    reports: 1,
    terminals: 1,
    bookedMinor: 100,
    estimateMinor: 10,
  },
  total: {
    value: 10,
    reports: 10,
    terminals: 10,
    bookedMinor: 1000,
    estimateMinor: 100,
    exposureTerminals: 0,
    exposureUnits: 0,
    withoutCost: 0,
  },
};
const options = {
  lying: false,
  marks: [causeMarks.tooling, causeMarks.handling],
  fill: ({ colour, pattern }: { colour: string; pattern: string }) => `${pattern} ${colour}`,
  write: String,
  writeShare: String,
  onBar: () => {},
  words: {
    labels: ['Tooling', 'Handling'],
    measure: 'reports',
    cumulative: 'cumulative',
    earlier: 'before',
    booked: 'booked',
    estimated: 'estimated',
    other: 'Other',
  },
};
const sets = (given: Pareto, lying = false) => paretoConfig(given, { ...options, lying }).data.datasets;
const named = (given: Pareto, label: string) => sets(given).find((set) => set.label === label);

describe('Pareto chart', () => {
  it('draws the bars, the rest, the cumulative line and the figures before', () => {
    const { data } = paretoConfig(pareto, options);
    expect(data.labels).toEqual(['Tooling', 'Handling', 'Other']);
    expect(named(pareto, 'reports')?.data).toEqual([6, 3, 1]);
    expect(named(pareto, 'cumulative')?.data).toEqual([0.6, 0.9]);
    expect(named(pareto, 'before')?.data).toEqual([12, 6]);
  });

  it('gives each cause its own colour and pattern', () => {
    expect(named(pareto, 'reports')?.backgroundColor).toEqual([
      'solid #D55E00',
      'diagonal #E69F00',
      'diagonal #c3cacb',
    ]);
  });

  it('ends both axes at the whole, and reads the simultaneous limits on the axis of shares', () => {
    const scales = paretoConfig(pareto, options).options?.scales;
    expect(scales?.y?.max).toBe(10);
    expect(scales?.share?.max).toBe(1);
    expect(named(pareto, 'reports')).toMatchObject({
      whiskerAxis: 'share',
      whiskers: [
        { low: 0.5, high: 0.7 },
        { low: expect.closeTo(0.2), high: expect.closeTo(0.4) },
      ],
    });
  });

  it('keeps booked and estimated money apart', () => {
    const money: Pareto = { ...pareto, measure: 'withEstimates' };
    expect(named(money, 'booked')?.data).toEqual([600, 300, 100]);
    expect(named(money, 'estimated')?.data).toEqual([60, 30, 10]);
    expect(named(money, 'estimated')?.backgroundColor).toBe('diagonal #f3e3bd');
  });

  it('has no line and no axis of shares for rates, and the interval of each rate', () => {
    const bars = pareto.bars.map((it) => ({ ...it, share: null, shareInterval: null, cumulativeShare: null }));
    const rates: Pareto = { ...pareto, measure: 'rate', bars };
    const { options: drawn } = paretoConfig(rates, options);
    expect(named(rates, 'cumulative')).toBeUndefined();
    expect(drawn?.scales?.share?.display).toBe(false);
    expect(drawn?.scales?.y?.max).toBeUndefined();
    expect(named(rates, 'reports')).toMatchObject({
      whiskers: [
        { low: 5, high: 7 },
        { low: 2, high: 4 },
      ],
    });
    expect(named(rates, 'reports')).not.toHaveProperty('whiskerAxis');
  });

  it('turns all of it on its side for a phone', () => {
    const { options: drawn } = paretoConfig(pareto, { ...options, lying: true });
    expect(drawn?.indexAxis).toBe('y');
    expect(drawn?.scales?.x?.max).toBe(10);
    expect(sets(pareto, true).find(({ label }) => label === 'cumulative')).toMatchObject({
      indexAxis: 'y',
      xAxisID: 'share',
    });
  });
});
