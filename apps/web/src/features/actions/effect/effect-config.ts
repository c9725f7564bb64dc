/** Rate by week built, before and after, with the clean point on the axis. Weeks without production stay empty. Pure. */
import type { ChartConfiguration } from 'chart.js';
import type { Effect } from '#contracts/effects.ts';
import { ink } from '#web/app/theme.ts';

interface Words {
  weeks: readonly string[];
  rate: string;
  before: string;
  after: string;
  cleanPoint: string;
}

type Kept = Pick<Effect, 'weeks' | 'plan' | 'before' | 'after'>;

/** Place of the clean point between the weeks' marks, which stand at whole numbers. */
export const cleanPointAt = ({ weeks, plan }: Pick<Effect, 'weeks' | 'plan'>): number => {
  const place = weeks.findIndex(({ to }) => plan.cleanPoint < to);
  return place < 0 ? weeks.length - 0.5 : place - (weeks[place]!.from < plan.cleanPoint ? 0 : 0.5);
};

export function effectConfig(
  effect: Kept,
  words: Words,
  write: (rate: number) => string,
): ChartConfiguration<'line', (number | null)[], string> {
  const { weeks, plan, before, after } = effect;
  const clean = cleanPointAt(effect);
  const first = weeks.findIndex(({ to }) => plan.before.from < to);
  const last = weeks.findLastIndex(({ from }) => from < plan.before.to);
  const level = (rate: number | null, from: number, to: number, content: string) =>
    rate === null
      ? {}
      : {
          [content]: {
            type: 'line' as const,
            xMin: from,
            xMax: to,
            yMin: rate,
            yMax: rate,
            borderColor: ink.quiet,
            borderDash: [6, 5],
            borderWidth: 2,
          },
        };
  return {
    type: 'line',
    data: {
      labels: [...words.weeks],
      datasets: [
        {
          label: words.rate,
          data: weeks.map(({ rate }) => rate.value),
          borderColor: ink.booked,
          backgroundColor: ink.booked,
          borderWidth: 1.5,
          pointRadius: 3,
          spanGaps: false,
        },
      ],
    },
    options: {
      scales: {
        x: { grid: { display: false }, offset: true },
        y: {
          beginAtZero: true,
          title: { display: true, text: words.rate },
          ticks: { callback: (tick) => write(Number(tick)) },
        },
      },
      plugins: {
        legend: { display: false },
        annotation: {
          annotations: {
            ...level(before.rate.value, first, last, words.before),
            ...level(after.rate.value, clean, weeks.length - 1, words.after),
            clean: {
              type: 'line',
              xMin: clean,
              xMax: clean,
              borderColor: ink.plain,
              borderWidth: 2,
              label: {
                display: true,
                content: words.cleanPoint,
                position: 'start',
                backgroundColor: 'transparent',
                color: ink.plain,
                padding: 2,
              },
            },
          },
        },
        tooltip: { callbacks: { label: ({ parsed }) => write(parsed.y ?? 0) } },
      },
    },
  };
}
