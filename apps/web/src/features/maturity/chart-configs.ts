/** The pictures of field maturity. Pure. */
import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { Maturity } from '#contracts/maturity.ts';
import { bookedMark, estimateMark, ink, otherMark } from '#web/app/theme.ts';
import { canvasFill } from '#web/ui/chart/pattern.ts';
import { rangeOf, whiskerOf } from '#web/ui/chart/whisker-range.ts';
import { million, rawPerMillion } from './months.ts';

type Bars = ChartConfiguration<'bar' | 'line', (number | null)[], string>;

/** So far as bars, hatched grey while too young; expected in the end as points with their intervals. */
export const buildMonthsConfig = (
  rows: Maturity['rows'],
  words: { months: readonly string[]; soFar: string; final: string; axis: string },
  write: (value: number) => string,
): Bars => ({
  type: 'bar',
  data: {
    labels: [...words.months],
    datasets: [
      {
        type: 'line',
        label: words.final,
        data: rows.map(({ finalPerMillion }) => finalPerMillion.value),
        whiskers: rows.map(({ finalPerMillion }) => whiskerOf(finalPerMillion)),
        showLine: false,
        pointRadius: 5,
        borderColor: ink.estimated,
        backgroundColor: ink.estimated,
      },
      {
        type: 'bar',
        label: words.soFar,
        data: rows.map(rawPerMillion),
        backgroundColor: rows.map(({ mature }) => canvasFill(mature ? bookedMark : otherMark)),
      },
    ],
  },
  options: {
    scales: {
      x: { grid: { display: false } },
      y: {
        // The widest intervals, of the youngest months, may leave the picture; they would flatten all others.
        ...rangeOf(rows.filter(({ mature }) => mature).map(({ finalPerMillion }) => finalPerMillion)),
        title: { display: true, text: words.axis },
      },
    },
    plugins: {
      legend: { position: 'bottom', labels: { usePointStyle: true } },
      tooltip: { callbacks: { label: ({ dataset, parsed }) => `${dataset.label}: ${write(parsed.y ?? 0)}` } },
    },
  },
});

type Point = { x: number; y: number };
type Curve = ChartDataset<'line', Point[]>;
const line = (label: string, data: Point[], more: Partial<Curve> = {}): Curve => ({
  label,
  data,
  pointRadius: 0,
  borderWidth: 2,
  borderColor: ink.booked,
  backgroundColor: ink.booked,
  ...more,
});

/** Share failed by months in service: as seen in steps with its limits, and the fitted curve. */
export const lifeConfig = (
  { steps, weibull }: Maturity['life'],
  words: { seen: string; limits: string; fitted: string; axis: string; months: string },
): ChartConfiguration<'line', Point[]> => {
  const limit = (side: 'low' | 'high') =>
    steps.flatMap(({ months, interval }) => {
      const value = interval?.[side];
      return value === undefined || value === null ? [] : [{ x: months, y: value * million }];
    });
  const stepped = { stepped: 'before' } as const;
  return {
    type: 'line',
    data: {
      datasets: [
        line(
          words.seen,
          steps.map(({ months, failed }) => ({ x: months, y: failed * million })),
          stepped,
        ),
        ...(['low', 'high'] as const).map((side) =>
          line(words.limits, limit(side), { ...stepped, borderWidth: 1, borderDash: [2, 3] }),
        ),
        line(
          words.fitted,
          weibull.curve.flatMap(({ months, failed }) =>
            failed.value === null ? [] : [{ x: months, y: failed.value * million }],
          ),
          { borderColor: ink.estimated, backgroundColor: ink.estimated, borderDash: [8, 4] },
        ),
      ],
    },
    options: {
      scales: {
        x: { type: 'linear', min: 0, title: { display: true, text: words.months } },
        y: { beginAtZero: true, title: { display: true, text: words.axis } },
      },
      plugins: {
        legend: {
          position: 'bottom',
          labels: { usePointStyle: true, pointStyle: 'line', filter: ({ datasetIndex }) => datasetIndex !== 2 },
        },
      },
    },
  };
};

/** Failures expected in each coming month: an estimate, so drawn like one. */
export const forecastConfig = (
  months: Maturity['forecast']['months'],
  words: { months: readonly string[]; expected: string; axis: string },
): ChartConfiguration<'bar', (number | null)[], string> => ({
  type: 'bar',
  data: {
    labels: [...words.months],
    datasets: [
      {
        label: words.expected,
        data: months.map(({ failures }) => failures.value),
        whiskers: months.map(({ failures }) => whiskerOf(failures)),
        backgroundColor: canvasFill(estimateMark),
        borderColor: ink.estimated,
        borderWidth: 1,
      },
    ],
  },
  options: {
    scales: {
      x: { grid: { display: false } },
      y: { ...rangeOf(months.map(({ failures }) => failures)), title: { display: true, text: words.axis } },
    },
    plugins: { legend: { display: false } },
  },
});
