/** Draws an interval over every bar or point: `whiskers` of a dataset, low and high in the units of its value axis. */
import type { Chart, Plugin, Scale } from 'chart.js';
import { ink } from '#web/app/theme.ts';

export type Whisker = { readonly low: number; readonly high: number } | null;

declare module 'chart.js' {
  interface ControllerDatasetOptions {
    whiskers?: readonly Whisker[];
    /** Where another axis than the dataset's own carries the limits. */
    whiskerAxis?: string;
  }
}

const cap = 4;

type Line = readonly [across: number, along: number, across2: number, along2: number];

const strokePath = (pen: CanvasRenderingContext2D, horizontal: boolean, lines: readonly Line[]): void => {
  pen.beginPath();
  for (const [a, b, c, d] of lines) {
    pen.moveTo(horizontal ? b : a, horizontal ? a : b);
    pen.lineTo(horizontal ? d : c, horizontal ? c : d);
  }
  pen.stroke();
};

const draw = (chart: Chart): void => {
  const pen = chart.ctx;
  pen.save();
  pen.strokeStyle = ink.strong;
  pen.lineWidth = 1.5;
  for (const [index, dataset] of chart.data.datasets.entries()) {
    const meta = chart.getDatasetMeta(index);
    const horizontal = meta.indexAxis === 'y' || chart.options.indexAxis === 'y';
    const scale: Scale | undefined =
      chart.scales[dataset.whiskerAxis ?? (horizontal ? meta.xAxisID : meta.yAxisID) ?? ''];
    if (!scale || meta.hidden) continue;
    for (const [at, whisker] of (dataset.whiskers ?? []).entries()) {
      const place = meta.data[at];
      if (!whisker || !place) continue;
      const low = scale.getPixelForValue(Math.max(whisker.low ?? scale.min, scale.min));
      const high = scale.getPixelForValue(Math.min(whisker.high ?? scale.max, scale.max));
      const middle = (horizontal ? place.y : place.x) ?? 0;
      strokePath(pen, horizontal, [
        [middle, low, middle, high],
        [middle - cap, low, middle + cap, low],
        [middle - cap, high, middle + cap, high],
      ]);
    }
  }
  pen.restore();
};

export const whiskers: Plugin = { id: 'whiskers', afterDatasetsDraw: draw };
