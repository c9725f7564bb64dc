/** Net saving a year of each set, an estimate with its interval. Pure. */
import type { ChartConfiguration } from 'chart.js';
import { estimateMark, ink } from '#web/app/theme.ts';
import { canvasFill } from '#web/ui/chart/pattern.ts';
import { rangeOf, whiskerOf } from '#web/ui/chart/whisker-range.ts';
import type { OutcomeRow } from './outcomes.ts';

export const savingConfig = (
  rows: readonly OutcomeRow[],
  words: { names: readonly string[]; axis: string },
  write: (minor: number) => string,
): ChartConfiguration<'bar', (number | null)[], string> => ({
  type: 'bar',
  data: {
    labels: [...words.names],
    datasets: [
      {
        label: words.axis,
        data: rows.map(({ netPerYear }) => netPerYear.value),
        whiskers: rows.map(({ netPerYear }) => whiskerOf(netPerYear)),
        backgroundColor: canvasFill(estimateMark),
        borderColor: ink.estimated,
        borderWidth: 1,
      },
    ],
  },
  options: {
    indexAxis: 'y',
    scales: {
      x: {
        ...rangeOf(rows.map(({ netPerYear }) => netPerYear)),
        title: { display: true, text: words.axis },
        ticks: { callback: (tick) => write(Number(tick)) },
      },
      y: { grid: { display: false } },
    },
    plugins: {
      legend: { display: false },
      tooltip: { callbacks: { label: ({ parsed }) => write(parsed.x ?? 0) } },
    },
  },
});
