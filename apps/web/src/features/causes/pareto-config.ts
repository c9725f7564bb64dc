/** The Pareto chart as a configuration: bars with intervals, cumulative line, figure of the earlier period. Pure. */
import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { Pareto } from '#contracts/analyses.ts';
import { estimateMark, ink, type Mark, otherMark } from '#web/app/theme.ts';

export interface ParetoWords {
  labels: readonly string[];
  measure: string;
  cumulative: string;
  earlier: string;
  booked: string;
  estimated: string;
  other: string;
}

interface Options {
  /** Bars lie down where the screen is narrow. */
  lying: boolean;
  words: ParetoWords;
  marks: readonly Mark[];
  fill: (mark: Mark) => CanvasPattern | string;
  write: (value: number) => string;
  writeShare: (share: number) => string;
  onBar: (index: number) => void;
}

type MixedChart = ChartConfiguration<'bar' | 'line', (number | null)[], string | string[]>;
type MixedSet = ChartDataset<'bar' | 'line', (number | null)[]>;

/** Long names stand on several lines under an upright bar. */
const wrapped = (name: string): string | string[] => {
  const lines = name.match(/\S.{0,13}(?=\s|$)|\S+/gu);
  return lines && lines.length > 1 ? lines.slice(0, 4) : name;
};

const barSets = (pareto: Pareto, { words, marks, fill }: Options): MixedSet[] => {
  const { bars, other, measure } = pareto;
  const fills = [...marks, otherMark].map(fill);
  const shared = { type: 'bar', order: 2, stack: 'value', maxBarThickness: 64 } as const;
  const onShares = bars.every(({ shareInterval }) => shareInterval !== null);
  const limits = {
    whiskers: bars.map(({ shareInterval, interval }) => {
      const limit = onShares ? shareInterval : interval;
      return limit && { low: limit.low, high: limit.high ?? Number.MAX_VALUE };
    }),
    ...(onShares && { whiskerAxis: 'share' }),
  };
  if (measure !== 'withEstimates')
    return [
      {
        ...shared,
        ...limits,
        label: words.measure,
        data: [...bars.map(({ value }) => value), ...(other ? [other.value] : [])],
        backgroundColor: fills,
      },
    ];
  return [
    {
      ...shared,
      label: words.booked,
      data: [...bars, ...(other ? [other] : [])].map(({ bookedMinor }) => bookedMinor),
      backgroundColor: fills,
    },
    {
      ...shared,
      ...limits,
      label: words.estimated,
      data: [...bars, ...(other ? [other] : [])].map(({ estimateMinor }) => estimateMinor),
      backgroundColor: fill(estimateMark),
      borderColor: ink.estimated,
      borderWidth: 1,
    },
  ];
};

const lineSets = ({ bars, compared }: Pareto, { words, lying }: Options): MixedSet[] => {
  const along = lying ? { indexAxis: 'y' as const, xAxisID: 'share' } : { yAxisID: 'share' };
  const cumulative: MixedSet[] = bars.some(({ cumulativeShare }) => cumulativeShare !== null)
    ? [
        {
          type: 'line',
          label: words.cumulative,
          order: 1,
          data: bars.map(({ cumulativeShare }) => cumulativeShare),
          borderColor: ink.quiet,
          backgroundColor: ink.quiet,
          borderWidth: 1.5,
          pointRadius: 2.5,
          ...along,
        },
      ]
    : [];
  const earlier: MixedSet[] = compared
    ? [
        {
          type: 'line',
          label: words.earlier,
          order: 0,
          data: bars.map(({ previous }) => previous),
          showLine: false,
          pointStyle: 'rectRot',
          pointRadius: 5,
          pointBorderColor: ink.strong,
          pointBackgroundColor: ink.sheet,
          pointBorderWidth: 1.5,
          borderColor: ink.strong,
          backgroundColor: ink.sheet,
          ...(lying && { indexAxis: 'y' as const }),
        },
      ]
    : [];
  return [...cumulative, ...earlier];
};

export const paretoConfig = (pareto: Pareto, options: Options): MixedChart => {
  const { lying, words, write, writeShare, onBar } = options;
  const hasShares = pareto.bars.some(({ share }) => share !== null);
  const total = pareto.total.value;
  const value = lying ? 'x' : 'y';
  const names = [...words.labels, ...(pareto.other ? [words.other] : [])];
  return {
    type: 'bar',
    data: {
      labels: lying ? names : names.map(wrapped),
      datasets: [...lineSets(pareto, options), ...barSets(pareto, options)],
    },
    options: {
      indexAxis: lying ? 'y' : 'x',
      interaction: { mode: 'index', intersect: false, axis: lying ? 'y' : 'x' },
      onClick: (_event, elements) => {
        const index = elements[0]?.index;
        if (index !== undefined && index < pareto.bars.length) onBar(index);
      },
      scales: {
        [lying ? 'y' : 'x']: {
          stacked: true,
          grid: { display: false },
          ticks: { autoSkip: false, maxRotation: 60, font: { size: 12 } },
        },
        [value]: {
          beginAtZero: true,
          // Both axes end at the whole, so that the cumulative line and the bars can be read against each other.
          ...(hasShares && total !== null && { max: total }),
          title: { display: true, text: words.measure },
          ticks: { callback: (tick: number | string) => write(Number(tick)), maxTicksLimit: lying ? 4 : 8 },
        },
        share: {
          display: hasShares,
          axis: value,
          position: lying ? 'top' : 'right',
          min: 0,
          max: 1,
          grid: { display: false },
          ticks: { callback: (tick: number | string) => writeShare(Number(tick)), maxTicksLimit: lying ? 4 : 8 },
        },
      },
      plugins: {
        legend: { position: 'bottom', labels: { usePointStyle: true, boxHeight: 8 } },
        tooltip: {
          callbacks: {
            label: ({ dataset, parsed }) => {
              const figure = (lying ? parsed.x : parsed.y) ?? 0;
              const share = 'yAxisID' in dataset || 'xAxisID' in dataset;
              return `${dataset.label}: ${share ? writeShare(figure) : write(figure)}`;
            },
          },
        },
      },
    },
  };
};
