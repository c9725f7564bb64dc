import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { colours } from '#api/platform/document/blocks.ts';
import { inOurLetters } from '#api/platform/document/letters.ts';

export interface Shown {
  text: string;
  /** estimated money stands in italics behind a tilde */
  estimated?: boolean;
  strong?: boolean;
  caution?: boolean;
}
export type Cell = string | Shown;
export interface Column {
  title: string;
  /** points, a share of what is left (`*`), or as wide as its text (`auto`) */
  width: number | '*' | 'auto';
  end?: boolean;
  /** never broken into lines */
  whole?: boolean;
}

const drawn = (cell: Cell) => {
  if (typeof cell === 'string') return { text: inOurLetters(cell) };
  const { text, estimated, strong, caution } = cell;
  return {
    text: inOurLetters(estimated ? `~ ${text}` : text),
    ...(estimated && { italics: true }),
    ...((strong || caution) && { bold: true }),
    ...(caution && { color: colours.caution }),
  };
};

const rules = {
  hLineWidth: (line: number) => (line === 0 ? 0 : 0.4),
  vLineWidth: () => 0,
  hLineColor: () => colours.line,
  paddingTop: () => 1.1,
  paddingBottom: () => 0.9,
  paddingLeft: () => 2,
  paddingRight: () => 3,
};

export const table = (columns: readonly Column[], rows: readonly (readonly Cell[])[]): Content => {
  const aligned = (place: number) => ({
    ...(columns[place]?.end && { alignment: 'right' as const }),
    ...(columns[place]?.whole && { noWrap: true }),
  });
  return {
    table: {
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      widths: columns.map(({ width }) => width),
      body: [
        columns.map(({ title }, place): TableCell => ({ ...drawn(title), style: 'head', ...aligned(place) })),
        ...rows.map((row) => row.map((cell, place): TableCell => ({ ...drawn(cell), ...aligned(place) }))),
      ],
    },
    layout: rules,
    margin: [-2, 0, 0, 1],
  };
};

export const line = (cell: Cell): Content => ({ ...drawn(cell), margin: [0, 0.6, 0, 0.6] });
export const quiet = (text: string): Content => ({ text: inOurLetters(text), style: 'quiet' });

export const part = (title: string, about: string, body: readonly Content[]): Content => [
  {
    text: [
      { text: inOurLetters(title), style: 'part' },
      { text: inOurLetters(`   ${about}`), style: 'quiet' },
    ],
    headlineLevel: 1,
    margin: [0, 4.5, 0, 1],
  },
  ...body,
];
