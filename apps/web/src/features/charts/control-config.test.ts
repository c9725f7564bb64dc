import { describe, expect, it } from 'vitest';
import { controlConfig, marksAt, placeOf } from './control-config.ts';

const week = (from: string, to: string, rules: never[] | ['sudden_jump'] = []) => ({
  key: from,
  from,
  to,
  report: null,
  reports: 3,
  terminals: 1000,
  value: 3000,
  centre: 2000,
  low: null,
  high: 5000,
  phase: 0,
  inBaseline: true,
  rules,
});
const points = [week('2026-06-01', '2026-06-08'), week('2026-06-08', '2026-06-15', ['sudden_jump'])];
const mark = (kind: 'action' | 'service', day: string) => ({ kind, day, label: 'x', id: null });
const words = {
  labels: ['23', '24'],
  value: 'rate',
  centre: 'centre',
  limits: 'limits',
  markers: { action: 'A', service: 'S', reelLot: 'L', housingLot: 'L' },
};

describe('marks', () => {
  it('stand before the week they lie in, and nowhere after the last', () => {
    expect(placeOf(points, '2026-06-07')).toBe(0);
    expect(placeOf(points, '2026-06-08')).toBe(1);
    expect(placeOf(points, '2026-06-15')).toBeNull();
  });
  it('of one week share a line', () => {
    const marks = marksAt(points, [mark('action', '2026-06-09'), mark('service', '2026-06-10')]);
    expect(marks.get(1)).toHaveLength(2);
  });
});

describe('the chart', () => {
  const config = controlConfig({ points, markers: [mark('action', '2026-06-09')] }, words, String);
  it('shows a pattern by shape and size, not by colour alone', () => {
    expect(config.data.datasets[0]).toMatchObject({ pointStyle: ['circle', 'rectRot'], pointRadius: [3, 6] });
  });
  it('draws no limit where there is none', () => {
    expect(config.data.datasets[3]!.data).toEqual([null, null]);
  });
  it('draws the action on the time axis', () => {
    expect(config.options!.plugins!.annotation!.annotations).toMatchObject({ 'mark-1': { xMin: 0.5 } });
  });
});
