/** A document before it is PDF or DOCX: what it says, in order; the renderers decide how it looks. */
import type { Locale, Paper } from '#contracts/shared/scalars.ts';

export interface Picture {
  jpeg: Buffer;
  width: number;
  height: number;
  caption: string;
}
/** A drawing as SVG text; `width` and `height` in points, `words` what it shows for who cannot see it. */
export interface Figure {
  svg: string;
  width: number;
  height: number;
  words: string;
}
export interface Column {
  title: string;
  /** share of the table's width; shares add up to one */
  share: number;
  align?: 'left' | 'right';
}

export type Block =
  | { kind: 'heading'; level: 1 | 2; text: string }
  | { kind: 'text'; text: string; tone?: 'muted' | 'strong' | 'caution' }
  | { kind: 'facts'; rows: readonly (readonly [label: string, value: string])[] }
  | { kind: 'table'; columns: readonly Column[]; rows: readonly (readonly string[])[] }
  | { kind: 'list'; items: readonly string[] }
  | { kind: 'figure'; figure: Figure; caption: string }
  | { kind: 'pictures'; pictures: readonly Picture[] }
  | { kind: 'page-break' };

export interface DocumentContent {
  title: string;
  subtitle: string;
  /** at the top of every page but the first */
  running: string;
  /** at the foot of every page, before the page number */
  foot: string;
  pageOf: (page: number, pages: number) => string;
  locale: Locale;
  paper: Paper;
  madeAt: Date;
  blocks: readonly Block[];
}

/** Width between the margins, in points (1/72 inch). */
export const textWidth = (paper: Paper): number => (paper === 'A4' ? 595.28 : 612) - 2 * margin;
export const margin = 48;
export const colours = {
  ink: '#1f2a30',
  muted: '#5b6870',
  line: '#c3ccd1',
  shade: '#eef2f4',
  accent: '#0b5c7d',
  caution: '#9a3412',
};
