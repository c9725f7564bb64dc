/** Weekly or monthly rates with their intervals around the overall rate. Weeks without production stay empty. Pure. */
import type { ChartConfiguration } from 'chart.js';
import type { Rates } from '#contracts/analyses.ts';
import { ink } from '#web/app/theme.ts';

interface Words {
  buckets: readonly string[];
  rate: string;
  overall: string;
}

export const rateConfig = (
  { buckets, overall }: Rates,
  words: Words,
  write: (rate: number) => string,
): ChartConfiguration<'line', (number | null)[], string> => ({
  type: 'line',
  data: {
    labels: [...words.buckets],
    datasets: [
      {
        label: words.rate,
        data: buckets.map(({ dpmo }) => dpmo.value),
        whiskers: buckets.map(({ dpmo }) =>
          dpmo.value === null ? null : { low: dpmo.interval.low, high: dpmo.interval.high ?? Number.MAX_VALUE },
        ),
        borderColor: ink.booked,
        backgroundColor: ink.booked,
        borderWidth: 1.5,
        pointRadius: 4,
        spanGaps: false,
      },
    ],
  },
  options: {
    scales: {
      x: { grid: { display: false }, offset: true },
      y: {
        beginAtZero: true,
        suggestedMax: Math.max(0, ...buckets.map(({ dpmo }) => dpmo.interval?.high ?? dpmo.value ?? 0)),
        title: { display: true, text: words.rate },
        ticks: { callback: (tick) => write(Number(tick)) },
      },
    },
    plugins: {
      legend: { display: false },
      annotation: {
        annotations:
          overall.dpmo.value === null
            ? {}
            : {
                overall: {
                  type: 'line',
                  yMin: overall.dpmo.value,
                  yMax: overall.dpmo.value,
                  borderColor: ink.quiet,
                  borderDash: [6, 5],
                  borderWidth: 1.5,
                  label: {
                    display: true,
                    content: words.overall,
                    position: 'start',
                    yAdjust: -12,
                    backgroundColor: 'transparent',
                    color: ink.plain,
                    padding: 0,
                  },
                },
              },
      },
      tooltip: { callbacks: { label: ({ parsed }) => write(parsed.y ?? 0) } },
    },
  },
});
