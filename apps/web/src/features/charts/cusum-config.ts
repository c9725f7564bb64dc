/** The two cumulative sums, upwards and downwards from zero, between their limits. Pure. */
import type { ChartConfiguration } from 'chart.js';
import type { Charts } from '#contracts/charts.ts';
import { ink } from '#web/app/theme.ts';

type Points = Extract<Charts['cusum'], { reason: null }>['points'];

interface Words {
  labels: readonly string[];
  up: string;
  down: string;
  axis: string;
}

const bound = (value: number) => ({
  type: 'line' as const,
  yMin: value,
  yMax: value,
  borderColor: ink.worse,
  borderDash: [6, 5],
  borderWidth: 1.5,
});

export const cusumConfig = (
  points: Points,
  limit: number,
  words: Words,
): ChartConfiguration<'line', number[], string> => ({
  type: 'line',
  data: {
    labels: [...words.labels],
    datasets: [
      {
        label: words.up,
        data: points.map(({ high }) => high),
        borderColor: ink.strong,
        backgroundColor: ink.strong,
        pointRadius: points.map(({ signal }) => (signal === 'up' ? 4 : 0)),
        borderWidth: 1.5,
      },
      {
        label: words.down,
        data: points.map(({ low }) => -low),
        borderColor: ink.booked,
        backgroundColor: ink.booked,
        borderDash: [2, 2],
        pointRadius: points.map(({ signal }) => (signal === 'down' ? 4 : 0)),
        borderWidth: 1.5,
      },
    ],
  },
  options: {
    scales: {
      x: { grid: { display: false }, offset: true, ticks: { maxTicksLimit: 16 } },
      y: { suggestedMax: limit * 1.1, suggestedMin: -limit * 1.1, title: { display: true, text: words.axis } },
    },
    plugins: {
      legend: { display: true, position: 'bottom' },
      annotation: { annotations: { upper: bound(limit), lower: bound(-limit) } },
    },
  },
});
