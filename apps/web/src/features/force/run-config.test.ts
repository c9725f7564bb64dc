import { expect, test } from 'vitest';
import type { ForceDetail } from '#contracts/force.ts';
import { seriesOf } from './run-config.ts';

const sample = (toolCode: string | null, newtons: number[]): ForceDetail['samples'][number] => ({
  id: toolCode ?? 'none',
  day: '2026-06-10',
  plantCode: 'LIS',
  toolCode,
  reference: null,
  newtons,
});
const words = { noTool: 'no tool', otherTools: 'others' };

test('each tool is a series over the one order of time', () => {
  expect(seriesOf([sample('A', [50, 51]), sample(null, [40]), sample('A', [52])], words)).toEqual([
    { label: 'A', data: [50, 51, null, 52] },
    { label: 'no tool', data: [null, null, 40, null] },
  ]);
});

test('more tools than marks: the rarest are drawn together, and no value is lost', () => {
  const samples = Array.from({ length: 8 }, (_, place) => sample(`T${place}`, Array<number>(10 - place).fill(50)));
  const series = seriesOf(samples, words);
  expect(series.map(({ label }) => label)).toEqual(['T0', 'T1', 'T2', 'T3', 'T4', 'others']);
  const drawn = series.flatMap(({ data }) => data).filter((value) => value !== null).length;
  expect(drawn).toBe(10 + 9 + 8 + 7 + 6 + 5 + 4 + 3);
});
