import {
  AlignmentType,
  BorderStyle,
  convertMillimetersToTwip,
  Document,
  Footer,
  Header,
  HeadingLevel,
  ImageRun,
  Packer,
  PageNumber,
  Paragraph,
  ShadingType,
  Table,
  TableCell,
  TableRow,
  TextRun,
  WidthType,
} from 'docx';
import sharp from 'sharp';
import {
  type Block,
  type Column,
  colours,
  type DocumentContent,
  type Figure,
  margin,
  type Picture,
  textWidth,
} from './blocks.ts';

const hex = (colour: string) => colour.slice(1);
const twips = (points: number) => Math.round(points * 20);
const pixels = (points: number) => Math.round((points * 96) / 72);
const none = { style: BorderStyle.NONE, size: 0, color: 'auto' };
const hair = { style: BorderStyle.SINGLE, size: 4, color: hex(colours.line) };

/** Lines of a text as one paragraph. */
const runs = (text: string, more: object = {}) =>
  text.split('\n').map((line, place) => new TextRun({ text: line, ...(place > 0 && { break: 1 }), ...more }));
const paragraph = (text: string, more: object = {}, run: object = {}) =>
  new Paragraph({ children: runs(text, run), spacing: { after: 100 }, ...more });

const tones = {
  muted: { color: hex(colours.muted) },
  strong: { bold: true },
  caution: { color: hex(colours.caution), bold: true },
} as const;

function cellOf(text: string, width: number, { align }: Pick<Column, 'align'> = {}, head = false): TableCell {
  return new TableCell({
    width: { size: twips(width), type: WidthType.DXA },
    margins: { top: 40, bottom: 40, left: 60, right: 60 },
    ...(head && { shading: { type: ShadingType.CLEAR, color: 'auto', fill: hex(colours.shade) } }),
    children: [
      new Paragraph({
        alignment: align === 'right' ? AlignmentType.RIGHT : AlignmentType.LEFT,
        children: runs(text, { bold: head }),
      }),
    ],
  });
}

function tableOf(rows: TableRow[], widths: readonly number[], lined: boolean): Table {
  const line = lined ? hair : none;
  return new Table({
    rows,
    columnWidths: widths.map(twips),
    width: { size: twips(widths.reduce((sum, it) => sum + it, 0)), type: WidthType.DXA },
    borders: { top: line, bottom: line, insideHorizontal: line, left: none, right: none, insideVertical: none },
  });
}

async function figureOf({ svg, width, height, words }: Figure, most: number): Promise<Paragraph> {
  const scale = Math.min(1, most / width, 560 / height);
  const fallback = await sharp(Buffer.from(svg), { density: 144 }).png().toBuffer();
  return new Paragraph({
    spacing: { before: 80 },
    children: [
      new ImageRun({
        type: 'svg',
        data: Buffer.from(svg),
        fallback: { type: 'png', data: fallback },
        transformation: { width: pixels(width * scale), height: pixels(height * scale) },
        altText: { name: words.slice(0, 60), description: words, title: words.slice(0, 60) },
      }),
    ],
  });
}

function picturesOf(pictures: readonly Picture[], width: number): Table {
  const each = width / 2;
  const pairs = Array.from({ length: Math.ceil(pictures.length / 2) }, (_, row) =>
    pictures.slice(2 * row, 2 * row + 2),
  );
  const cells = (pair: readonly Picture[]) =>
    [0, 1].map((place) => {
      const picture = pair[place];
      if (!picture) return cellOf('', each);
      const scale = Math.min((each - 12) / picture.width, 190 / picture.height);
      const size = { width: pixels(picture.width * scale), height: pixels(picture.height * scale) };
      return new TableCell({
        width: { size: twips(each), type: WidthType.DXA },
        children: [
          new Paragraph({
            keepNext: true,
            children: [
              new ImageRun({
                type: 'jpg',
                data: picture.jpeg,
                transformation: size,
                altText: { name: 'photo', title: 'photo', description: picture.caption },
              }),
            ],
          }),
          paragraph(picture.caption, {}, { color: hex(colours.muted), size: 17 }),
        ],
      });
    });
  const rows = pairs.map((pair) => new TableRow({ cantSplit: true, children: cells(pair) }));
  return tableOf(rows, [each, each], false);
}

async function contentOf(block: Block, width: number): Promise<(Paragraph | Table)[]> {
  switch (block.kind) {
    case 'heading':
      return [
        new Paragraph({
          heading: block.level === 1 ? HeadingLevel.HEADING_1 : HeadingLevel.HEADING_2,
          keepNext: true,
          children: [new TextRun(block.text)],
        }),
      ];
    case 'text':
      return [paragraph(block.text, {}, block.tone ? tones[block.tone] : {})];
    case 'facts': {
      const widths = [width * 0.24, width * 0.76] as const;
      const rows = block.rows.map(
        ([label, value]) => new TableRow({ children: [cellOf(label, widths[0]), cellOf(value, widths[1])] }),
      );
      return [tableOf(rows, widths, false), paragraph('')];
    }
    case 'table': {
      const widths = block.columns.map(({ share }) => share * width);
      const row = (texts: readonly string[], head: boolean) =>
        new TableRow({
          tableHeader: head,
          cantSplit: true,
          children: texts.map((text, place) => cellOf(text, widths[place] ?? 0, block.columns[place], head)),
        });
      const titles = block.columns.map(({ title }) => title);
      return [
        tableOf([row(titles, true), ...block.rows.map((texts) => row(texts, false))], widths, true),
        paragraph(''),
      ];
    }
    case 'list':
      return block.items.map((item) => paragraph(item, { bullet: { level: 0 } }));
    case 'figure':
      return [
        await figureOf(block.figure, width),
        paragraph(block.caption, {}, { color: hex(colours.muted), size: 17 }),
      ];
    case 'pictures':
      return [picturesOf(block.pictures, width), paragraph('')];
    case 'page-break':
      return [new Paragraph({ pageBreakBefore: true, children: [] })];
  }
}

const heading = (size: number, colour: string) => ({
  run: { size, bold: true, color: hex(colour), font: 'Calibri' },
  paragraph: { spacing: { before: 240, after: 80 } },
});

/** The document as DOCX bytes, in the reader's own fonts. */
export async function renderDocx(document: DocumentContent): Promise<Buffer> {
  const width = textWidth(document.paper);
  const blocks = await Promise.all(document.blocks.map((block) => contentOf(block, width)));
  const edge = (children: TextRun[], alignment: (typeof AlignmentType)['LEFT' | 'RIGHT'] = AlignmentType.LEFT) =>
    new Paragraph({ alignment, children });
  const quiet = { size: 16, color: hex(colours.muted) };
  const [before = '', between = '', after = ''] = document.pageOf(-1, -2).split(/-1|-2/);
  const file = new Document({
    title: document.title,
    subject: document.subtitle,
    creator: 'Escape Ledger',
    lastModifiedBy: 'Escape Ledger',
    styles: {
      default: {
        document: { run: { font: 'Calibri', size: 20, color: hex(colours.ink) } },
        title: heading(38, colours.accent),
        heading1: heading(26, colours.accent),
        heading2: heading(22, colours.ink),
      },
    },
    sections: [
      {
        properties: {
          titlePage: true,
          page: {
            size:
              document.paper === 'A4'
                ? { width: convertMillimetersToTwip(210), height: convertMillimetersToTwip(297) }
                : { width: twips(612), height: twips(792) },
            margin: { top: twips(margin), bottom: twips(margin), left: twips(margin), right: twips(margin) },
          },
        },
        headers: { default: new Header({ children: [edge([new TextRun({ text: document.running, ...quiet })])] }) },
        footers: Object.fromEntries(
          ['default', 'first'].map((place) => [
            place,
            new Footer({
              children: [
                edge([new TextRun({ text: document.foot, ...quiet })]),
                edge(
                  [
                    new TextRun({
                      children: [before, PageNumber.CURRENT, between, PageNumber.TOTAL_PAGES, after],
                      ...quiet,
                    }),
                  ],
                  AlignmentType.RIGHT,
                ),
              ],
            }),
          ]),
        ),
        children: [
          new Paragraph({ heading: HeadingLevel.TITLE, children: [new TextRun(document.title)] }),
          paragraph(document.subtitle, {}, { size: 24 }),
          ...blocks.flat(),
        ],
      },
    ],
  });
  return Packer.toBuffer(file);
}
