import { colours, type Figure } from '../blocks.ts';
import { drawing, linesOf, textAt, widthOf } from './svg-text.ts';

export interface TimelineEvent {
  /** days since some fixed day */
  at: number;
  label: string;
  text: string;
}

const size = 8.5;
const most = 60;

/** Events along a line from top to bottom, spaced by the time between them within bounds that keep them legible. */
export function timelineFigure(events: readonly TimelineEvent[], width: number, words: string): Figure {
  const shown = events.slice(0, most);
  const labelWidth = Math.max(40, ...shown.map(({ label }) => widthOf(label, size))) + 8;
  const axis = labelWidth + 8;
  const spans = shown.slice(1).map(({ at }, place) => at - shown[place]!.at);
  const longest = Math.max(1, ...spans);
  let y = 10;
  const parts: string[] = [];
  shown.forEach(({ label, text }, place) => {
    const lines = linesOf(text, size, width - axis - 18);
    parts.push(
      `<circle cx="${axis}" cy="${(y - 3).toFixed(1)}" r="3.4" fill="${colours.accent}"/>`,
      textAt(labelWidth, y, size, label, `text-anchor="end" fill="${colours.muted}"`),
      ...lines.map((line, row) => textAt(axis + 12, y + row * 10.5, size, line, `fill="${colours.ink}"`)),
    );
    const span = spans[place];
    if (span !== undefined) y += Math.max(lines.length * 10.5 + 5, 14) + 18 * Math.sqrt(span / longest);
    else y += (lines.length - 1) * 10.5;
  });
  const line = `<path d="M${axis} 6V${(y - 3).toFixed(1)}" stroke="${colours.line}" stroke-width="1.6"/>`;
  return { svg: drawing(width, y + 8, [line, ...parts]), width, height: y + 8, words };
}
