import { colours, type Figure } from '../blocks.ts';
import { drawing, linesOf, textAt } from './svg-text.ts';

export interface TreeNode {
  text: string;
  depth: number;
  /** small print under the node: what it rests on */
  notes: readonly string[];
  look: 'plain' | 'chosen' | 'ruled-out';
}

const size = 9;
const small = 7.5;
const step = 20;
const gap = 7;
const mostHeight = 520;

interface Placed extends TreeNode {
  lines: string[];
  noteLines: string[];
  height: number;
}

const measured = (node: TreeNode, width: number): Placed => {
  const room = width - node.depth * step - 16;
  const lines = linesOf(node.text, size, room);
  const noteLines = node.notes.flatMap((note) => linesOf(note, small, room));
  return { ...node, lines, noteLines, height: 9 + lines.length * 11.5 + noteLines.length * 9.5 };
};

const looks = {
  plain: { fill: '#ffffff', line: colours.line, dash: '', bold: false },
  chosen: { fill: '#e3f0f5', line: colours.accent, dash: '', bold: true },
  'ruled-out': { fill: '#fafafa', line: colours.line, dash: 'stroke-dasharray="3 2"', bold: false },
} as const;

function drawNode(node: Placed, y: number, width: number): string {
  const x = node.depth * step;
  const { fill, line, dash, bold } = looks[node.look];
  const ink = node.look === 'ruled-out' ? colours.muted : colours.ink;
  const box = `<rect x="${x + 0.5}" y="${y.toFixed(1)}" width="${width - x - 1}" height="${node.height.toFixed(1)}" rx="3" fill="${fill}" stroke="${line}" stroke-width="${bold ? 1.4 : 0.8}" ${dash}/>`;
  const texts = node.lines.map((text, place) =>
    textAt(x + 8, y + 13 + place * 11.5, size, text, `fill="${ink}"${bold ? ' font-weight="bold"' : ''}`),
  );
  const below = y + 13 + node.lines.length * 11.5;
  const notes = node.noteLines.map((text, place) =>
    textAt(x + 8, below - 1 + place * 9.5, small, text, `fill="${colours.muted}"`),
  );
  return [box, ...texts, ...notes].join('');
}

/** From the nodes of one figure: a line from each down the side of its children. */
function drawLinks(nodes: readonly Placed[], tops: readonly number[]): string[] {
  return nodes.flatMap((node, place) => {
    if (node.depth === 0) return [];
    const x = (node.depth - 1) * step + 9;
    const parent = nodes.slice(0, place).findLastIndex(({ depth }) => depth === node.depth - 1);
    const from = parent < 0 ? 0 : tops[parent]! + nodes[parent]!.height;
    const y = tops[place]! + 11;
    return [
      `<path d="M${x} ${from.toFixed(1)}V${y.toFixed(1)}H${x + step - 9}" fill="none" stroke="${colours.muted}" stroke-width="0.8"/>`,
    ];
  });
}

/** A tree drawn as nested boxes, one under the other, so that long texts stay legible; in pieces that fit a page. */
export function treeFigures(nodes: readonly TreeNode[], width: number, words: string): Figure[] {
  const pieces: Placed[][] = [[]];
  let height = 0;
  for (const node of nodes.map((it) => measured(it, width))) {
    if (height + node.height > mostHeight && pieces.at(-1)!.length > 0) {
      pieces.push([]);
      height = 0;
    }
    pieces.at(-1)!.push(node);
    height += node.height + gap;
  }
  return pieces
    .filter((piece) => piece.length > 0)
    .map((piece) => {
      const tops: number[] = [];
      let y = 1;
      for (const node of piece) {
        tops.push(y);
        y += node.height + gap;
      }
      const boxes = piece.map((node, place) => drawNode(node, tops[place]!, width));
      return { svg: drawing(width, y, [...drawLinks(piece, tops), ...boxes]), width, height: y, words };
    });
}
