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

/** The power of ten above every measured limit. */
const ceiling = (byFound: Costs['byFound']): number => {
  const highest = byFound.map(({ factor }) => factor.interval?.high ?? factor.value ?? 1);
  return 10 ** Math.ceil(Math.log10(Math.max(10, ...highest)));
};

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
        // The yardstick soon leaves the measured range; it may leave the picture too.
        max: ceiling(byFound),
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
