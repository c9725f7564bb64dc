import { colours, type Figure } from '../blocks.ts';
import { drawing, textAt, widthOf } from './svg-text.ts';

export interface IntervalRow {
  label: string;
  /** as it is written beside the row */
  written: string;
  value: number;
  low: number;
  high: number;
}

const size = 9;
const pitch = 30;

/** A round step that gives between three and seven ticks up to `top`. */
function stepFor(top: number): number {
  const power = 10 ** Math.floor(Math.log10(top / 3));
  return power * ([1, 2, 5, 10].find((factor) => top / (factor * power) <= 6) ?? 10);
}

/** Estimates as bars from zero with their intervals as whiskers, one under the other on a common axis. */
export function intervalFigure(
  rows: readonly IntervalRow[],
  { width, axis, number, words }: { width: number; axis: string; number: (value: number) => string; words: string },
): Figure {
  const left = Math.max(30, ...rows.map(({ label }) => widthOf(label, size))) + 10;
  const right = Math.max(30, ...rows.map(({ written }) => widthOf(written, size))) + 10;
  const top = Math.max(...rows.flatMap(({ value, high }) => [value, high]), Number.MIN_VALUE) * 1.04;
  const scale = (value: number) => left + (value / top) * (width - left - right);
  const bottom = rows.length * pitch + 6;
  const step = stepFor(top);
  const ticks = Array.from({ length: Math.floor(top / step) + 1 }, (_, place) => place * step);
  const grid = ticks.flatMap((tick) => [
    `<path d="M${scale(tick).toFixed(1)} 2V${bottom}" stroke="${colours.line}" stroke-width="0.6"/>`,
    textAt(scale(tick), bottom + 11, 7.5, number(tick), `text-anchor="middle" fill="${colours.muted}"`),
  ]);
  const bars = rows.flatMap(({ label, written, value, low, high }, place) => {
    const y = 6 + place * pitch;
    const middle = y + 9;
    const whisker = `M${scale(low).toFixed(1)} ${middle}H${scale(high).toFixed(1)}M${scale(low).toFixed(1)} ${middle - 4}v8M${scale(high).toFixed(1)} ${middle - 4}v8`;
    return [
      textAt(left - 6, middle + 3, size, label, `text-anchor="end" fill="${colours.ink}"`),
      `<rect x="${left}" y="${y}" width="${Math.max(0.5, scale(value) - left).toFixed(1)}" height="18" fill="#9cc3d3"/>`,
      `<path d="${whisker}" stroke="${colours.ink}" stroke-width="1.1" fill="none"/>`,
      textAt(width - right + 6, middle + 3, size, written, `fill="${colours.ink}"`),
    ];
  });
  const title = textAt(left, bottom + 23, 8, axis, `fill="${colours.muted}"`);
  return { svg: drawing(width, bottom + 28, [...grid, ...bars, title]), width, height: bottom + 28, words };
}
