/** Single forces in order of time, each tool with its own mark, against minimum, bound and median. Pure. */
import type { ChartConfiguration, PointStyle } from 'chart.js';
import type { ForceDetail } from '#contracts/force.ts';
import { ink } from '#web/app/theme.ts';

interface Words {
  axis: string;
  noTool: string;
  otherTools: string;
  minimum: string;
  bound: string;
  day: (day: string) => string;
  force: (newtons: number) => string;
}

const shapes: readonly PointStyle[] = ['circle', 'rectRot', 'triangle', 'rect', 'star', 'crossRot'];
/** Not the colours of the causes: a tool is told by its shape first. */
const colours = [ink.booked, ink.estimated, ink.strong, ink.better, ink.quiet, ink.worse];

/** A level across the chart. */
const level = (value: number, label: string, colour: string, dash: number[], position: 'start' | 'center' | 'end') => ({
  type: 'line' as const,
  yMin: value,
  yMax: value,
  borderColor: colour,
  borderWidth: 1.5,
  borderDash: dash,
  label: {
    display: label !== '',
    content: label,
    position,
    color: colour,
    backgroundColor: ink.sheet,
    font: { size: 12 },
  },
});

/** The series of the chart: one for each tool, the rarest together where there are more tools than marks. */
export function seriesOf(samples: ForceDetail['samples'], words: Pick<Words, 'noTool' | 'otherTools'>) {
  const counts = new Map<string, number>();
  for (const { toolCode, newtons } of samples) {
    const name = toolCode ?? words.noTool;
    counts.set(name, (counts.get(name) ?? 0) + newtons.length);
  }
  const named = [...counts].sort((a, b) => b[1] - a[1]).map(([name]) => name);
  const own = named.length > shapes.length ? named.slice(0, shapes.length - 1) : named;
  const points = samples.flatMap(({ toolCode, newtons }) =>
    newtons.map((value) => ({
      value,
      series: own.includes(toolCode ?? words.noTool) ? (toolCode ?? words.noTool) : words.otherTools,
    })),
  );
  const labels = named.length > own.length ? [...own, words.otherTools] : own;
  return labels.map((label) => ({ label, data: points.map(({ value, series }) => (series === label ? value : null)) }));
}

export function runConfig(
  { samples, whole, runs }: ForceDetail,
  words: Words,
): ChartConfiguration<'line', (number | null)[], string> {
  const days = samples.flatMap(({ day, newtons }) => newtons.map(() => words.day(day)));
  const { minimumN = null, bound = null } = whole ?? {};
  return {
    type: 'line',
    data: {
      labels: days,
      datasets: seriesOf(samples, words).map(({ label, data }, place) => ({
        label,
        data,
        showLine: false,
        pointRadius: 3.5,
        pointStyle: shapes[place % shapes.length] ?? 'circle',
        borderColor: colours[place % colours.length] ?? ink.booked,
        backgroundColor: colours[place % colours.length] ?? ink.booked,
      })),
    },
    options: {
      scales: {
        x: { grid: { display: false }, ticks: { autoSkip: true, maxTicksLimit: 10, maxRotation: 0 } },
        y: { beginAtZero: true, title: { display: true, text: words.axis } },
      },
      plugins: {
        legend: { position: 'bottom', labels: { usePointStyle: true } },
        tooltip: { callbacks: { label: ({ dataset, parsed }) => `${dataset.label}: ${words.force(parsed.y ?? 0)}` } },
        annotation: {
          annotations: {
            ...(minimumN !== null && { minimum: level(minimumN, words.minimum, ink.worse, [], 'start') }),
            ...(bound !== null && { bound: level(bound, words.bound, ink.booked, [6, 4], 'end') }),
            ...(runs && { median: level(runs.median, '', ink.quiet, [2, 3], 'center') }),
          },
        },
      },
    },
  };
}
