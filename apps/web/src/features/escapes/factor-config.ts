/** Measured escalation factors on a logarithmic axis, with the rule of ten as a dashed yardstick. Pure. */
import type { ChartConfiguration } from 'chart.js';
import type { Costs } from '#contracts/analyses.ts';
import { ink } from '#web/app/theme.ts';

interface Words {
  stages: readonly string[];
  measured: string;
  ruleOfTen: string;
  axis: string;
}

export const factorConfig = (
  byFound: Costs['byFound'],
  words: Words,
  write: (factor: number) => string,
): ChartConfiguration<'line', (number | null)[], string> => ({
  type: 'line',
  data: {
    labels: [...words.stages],
    datasets: [
      {
        label: words.measured,
        data: byFound.map(({ factor }) => factor.value),
        whiskers: byFound.map(({ factor }) =>
          factor.value === null ? null : { low: factor.interval.low, high: factor.interval.high ?? Number.MAX_VALUE },
        ),
        showLine: false,
        pointRadius: 6,
        borderColor: ink.booked,
        backgroundColor: ink.booked,
      },
      {
        label: words.ruleOfTen,
        data: byFound.map(({ ruleOfTen }) => ruleOfTen),
        borderColor: ink.quiet,
        backgroundColor: ink.sheet,
        borderDash: [6, 5],
        borderWidth: 1.5,
        pointRadius: 0,
      },
    ],
  },
  options: {
    scales: {
      x: { grid: { display: false }, offset: true, ticks: { autoSkip: false } },
      y: {
        type: 'logarithmic',
        title: { display: true, text: words.axis },
        ticks: { callback: (tick) => (Number.isInteger(Math.log10(Number(tick))) ? write(Number(tick)) : '') },
      },
    },
    plugins: {
      legend: { position: 'bottom', labels: { usePointStyle: true } },
      tooltip: { callbacks: { label: ({ dataset, parsed }) => `${dataset.label}: ${write(parsed.y ?? 0)}` } },
    },
  },
});
