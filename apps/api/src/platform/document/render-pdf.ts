import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { type Block, colours, type DocumentContent, margin, type Picture, textWidth } from './blocks.ts';
import { inOurLetters } from './letters.ts';
import { makePdf } from './make-pdf.ts';

const tones = {
  muted: { color: colours.muted },
  strong: { bold: true },
  caution: { color: colours.caution, bold: true },
} as const;

/** Rules of hair between the rows, none at the sides. */
const layout = {
  hLineWidth: () => 0.5,
  vLineWidth: () => 0,
  hLineColor: () => colours.line,
  paddingTop: () => 3,
  paddingBottom: () => 3,
};

const cell = (text: string, more: object = {}): Content => ({ text: inOurLetters(text), ...more }) as Content;

function picturesOf(pictures: readonly Picture[], width: number): Content {
  const gap = 12;
  const each = (width - gap) / 2;
  const pairs = Array.from({ length: Math.ceil(pictures.length / 2) }, (_, row) =>
    pictures.slice(2 * row, 2 * row + 2),
  );
  return pairs.map((pair) => ({
    columnGap: gap,
    columns: [0, 1].map((place) => {
      const picture = pair[place];
      if (!picture) return { width: each, text: '' };
      return {
        width: each,
        stack: [
          { image: `data:image/jpeg;base64,${picture.jpeg.toString('base64')}`, fit: [each, 190] },
          cell(picture.caption, { style: 'caption' }),
        ],
      };
    }),
    margin: [0, 4, 0, 6],
    unbreakable: true,
  })) as Content;
}

function contentOf(block: Block, width: number): Content {
  switch (block.kind) {
    case 'heading':
      return cell(block.text, { style: `h${block.level}`, headlineLevel: block.level });
    case 'text':
      return cell(block.text, { margin: [0, 0, 0, 5], ...(block.tone && tones[block.tone]) });
    case 'facts':
      return {
        table: {
          widths: [width * 0.24, '*'],
          body: block.rows.map(([label, value]) => [cell(label, { color: colours.muted }), cell(value)]),
        },
        layout: 'noBorders',
        margin: [0, 0, 0, 5],
      };
    case 'table': {
      const aligned = (place: number) => ({ alignment: block.columns[place]?.align ?? 'left' });
      return {
        table: {
          headerRows: 1,
          widths: block.columns.map(({ share }) => share * width - 8),
          body: [
            block.columns.map(({ title }, place) =>
              cell(title, { bold: true, fillColor: colours.shade, ...aligned(place) }),
            ),
            ...block.rows.map((row) => row.map((text, place) => cell(text, aligned(place)))),
          ],
        },
        layout,
        margin: [0, 2, 0, 8],
      };
    }
    case 'list':
      return { ul: block.items.map((item) => cell(item)), margin: [0, 0, 0, 6] };
    case 'figure': {
      const { svg, width: drawn, height } = block.figure;
      const scale = Math.min(1, width / drawn, 560 / height);
      return {
        unbreakable: true,
        margin: [0, 4, 0, 8],
        stack: [
          { svg: inOurLetters(svg), width: drawn * scale, height: height * scale },
          cell(block.caption, { style: 'caption' }),
        ],
      };
    }
    case 'pictures':
      return picturesOf(block.pictures, width);
    case 'page-break':
      return { text: '', pageBreak: 'after' };
  }
}

/** A heading stays with what it heads. */
const loneHeading: TDocumentDefinitions['pageBreakBefore'] = (node, nodes) =>
  node.headlineLevel !== undefined &&
  nodes.getFollowingNodesOnPage().length === 0 &&
  nodes.getNodesOnNextPage().length > 0;

/** The document as PDF bytes; the same content gives the same bytes but for the identifier in the trailer. */
export async function renderPdf(document: DocumentContent): Promise<Buffer> {
  const width = textWidth(document.paper);
  const definition: TDocumentDefinitions = {
    pageSize: document.paper === 'A4' ? 'A4' : 'LETTER',
    pageMargins: [margin, margin + 6, margin, margin + 4],
    language: document.locale,
    info: {
      title: inOurLetters(document.title),
      subject: inOurLetters(document.subtitle),
      creationDate: document.madeAt,
      producer: 'Escape Ledger',
      creator: 'Escape Ledger',
    },
    defaultStyle: { font: 'Roboto', fontSize: 9.5, lineHeight: 1.18, color: colours.ink },
    styles: {
      title: { fontSize: 19, bold: true, color: colours.accent },
      subtitle: { fontSize: 12, margin: [0, 2, 0, 10] },
      h1: { fontSize: 12.5, bold: true, color: colours.accent, margin: [0, 12, 0, 4] },
      h2: { fontSize: 10.5, bold: true, margin: [0, 6, 0, 3] },
      caption: { fontSize: 8.5, color: colours.muted, margin: [0, 2, 0, 0] },
      edge: { fontSize: 8, color: colours.muted },
    },
    header: (page) =>
      page === 1 ? '' : cell(document.running, { style: 'edge', margin: [margin, 24, margin, 0], noWrap: true }),
    footer: (page, pages) => ({
      margin: [margin, 12, margin, 0],
      columns: [
        cell(document.foot, { style: 'edge' }),
        cell(document.pageOf(page, pages), { style: 'edge', alignment: 'right', width: 'auto' }),
      ],
    }),
    content: [
      cell(document.title, { style: 'title' }),
      cell(document.subtitle, { style: 'subtitle' }),
      ...document.blocks.map((block) => contentOf(block, width)),
    ],
    ...(loneHeading && { pageBreakBefore: loneHeading }),
  };
  return makePdf(definition);
}
