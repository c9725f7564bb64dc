/** The pictures of the gates. Pure. */
import type { ChartConfiguration } from 'chart.js';
import type { Gates } from '#contracts/gates.ts';
import type { Estimate } from '#contracts/shared/estimate.ts';
import { bookedMark, estimateMark, ink, otherMark } from '#web/app/theme.ts';
import { canvasFill } from '#web/ui/chart/pattern.ts';
import { rangeOf, whiskerOf } from '#web/ui/chart/whisker-range.ts';

type Bars = ChartConfiguration<'bar', (number | null)[], string>;

/** What each gate finds of what reaches it, as reported and with the field still to come. */
export const effectivenessConfig = (
  gates: Gates['gates'],
  words: { stages: readonly string[]; raw: string; matured: string; axis: string },
  write: (share: number) => string,
): Bars => ({
  type: 'bar',
  data: {
    labels: [...words.stages],
    datasets: [
      {
        label: words.raw,
        data: gates.map(({ effectiveness }) => effectiveness.value),
        whiskers: gates.map(({ effectiveness }) => whiskerOf(effectiveness)),
        backgroundColor: canvasFill(otherMark),
      },
      {
        label: words.matured,
        data: gates.map(({ matured }) => matured.value),
        whiskers: gates.map(({ matured }) => whiskerOf(matured)),
        backgroundColor: canvasFill(bookedMark),
      },
    ],
  },
  options: {
    scales: {
      x: { grid: { display: false } },
      y: {
        min: 0,
        max: 1,
        title: { display: true, text: words.axis },
        ticks: { callback: (tick) => write(Number(tick)) },
      },
    },
    plugins: {
      legend: { position: 'bottom', labels: { usePointStyle: true } },
      tooltip: { callbacks: { label: ({ dataset, parsed }) => `${dataset.label}: ${write(parsed.y ?? 0)}` } },
    },
  },
});

/** Money by stage with intervals, hatched where estimates are in it. */
export const moneyConfig = (
  values: readonly Estimate[],
  words: { stages: readonly string[]; label: string },
  options: { booked: boolean; write: (minor: number) => string },
): Bars => ({
  type: 'bar',
  data: {
    labels: [...words.stages],
    datasets: [
      {
        label: words.label,
        data: values.map(({ value }) => value),
        whiskers: values.map(whiskerOf),
        backgroundColor: canvasFill(options.booked ? bookedMark : estimateMark),
        borderColor: options.booked ? ink.booked : ink.estimated,
        borderWidth: 1,
      },
    ],
  },
  options: {
    scales: {
      x: { grid: { display: false } },
      y: {
        ...rangeOf(values),
        ticks: { callback: (tick) => options.write(Number(tick)) },
      },
    },
    plugins: {
      legend: { display: false },
      tooltip: { callbacks: { label: ({ parsed }) => options.write(parsed.y ?? 0) } },
    },
  },
});
