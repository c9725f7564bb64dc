import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { colours } from '#api/platform/document/blocks.ts';
import { inOurLetters } from '#api/platform/document/letters.ts';
import { makePdf } from '#api/platform/document/make-pdf.ts';
import type { Review } from '#contracts/review.ts';
import type { Locale, Paper } from '#contracts/shared/scalars.ts';
import type { Room } from './drawing.ts';
import { type Language, languageOf } from './language.ts';
import { quiet } from './layout.ts';
import { partsOf } from './parts.ts';

const margin = 32;
export const mostPages = 2;

/** Tried in turn until the review has room on two pages: fewer rows first, then smaller letters. */
const rooms: readonly { room: Room; size: number }[] = [
  { room: { promises: 12, signals: 6, rows: 8, decisions: 16 }, size: 8 },
  { room: { promises: 8, signals: 6, rows: 6, decisions: 12 }, size: 7.6 },
  { room: { promises: 6, signals: 5, rows: 5, decisions: 10 }, size: 7.3 },
  { room: { promises: 5, signals: 4, rows: 4, decisions: 8 }, size: 7 },
  { room: { promises: 4, signals: 3, rows: 3, decisions: 6 }, size: 6.6 },
];

export const whoseReview = ({ group, places }: Review['content'], { words, format }: Language): string => {
  if (group) return words.group;
  if (places.length === 1) return `${places[0]!.name} (${places[0]!.code})`;
  return format.list(places.map(({ code }) => code));
};

function stateOf(
  { state, closedBy, closedAt, reason, edition }: Review,
  zone: string,
  { words, format }: Language,
): string {
  const corrected = reason ? [words.stamp.edition(format.count(edition), reason)] : [];
  const now =
    state === 'closed' && closedBy && closedAt
      ? words.stamp.closed(closedBy, format.instant(closedAt, zone))
      : state === 'open'
        ? words.stamp.open
        : words.stamp.live;
  return [...corrected, now].join(' · ');
}

function stamps(review: Review, zone: string, { words, format }: Language): Content[] {
  const { data, rates, withoutRate } = review.content;
  const last = data.lastChange ? format.instant(data.lastChange.at, zone) : words.stamp.noChange;
  const counted = words.stamp.data(
    format.count(data.reports),
    format.count(data.terminalsInserted),
    last,
    data.application,
  );
  const converted = rates.map(({ base, quote, rate, rateOn }) => `${base} ${rate} ${quote} (${format.day(rateOn)})`);
  return [
    { text: '', margin: [0, 3, 0, 0] },
    quiet(
      [
        words.stamp.estimates,
        counted,
        ...(converted.length > 0 ? [words.stamp.rates(converted.join(', '))] : []),
        ...(withoutRate.length > 0 ? [words.stamp.withoutRate(withoutRate.join(', '))] : []),
        ...(review.state === 'closed' && review.hash ? [words.stamp.hash(review.hash)] : []),
      ].join(' '),
    ),
  ];
}

interface Drawn {
  bytes: Buffer;
  pages: number;
}

async function draw(
  review: Review,
  language: Language,
  paper: Paper,
  { room, size }: (typeof rooms)[number],
): Promise<Drawn> {
  const { content } = review;
  const { words, format, locale } = language;
  const zone = content.places.length === 1 ? content.places[0]!.zone : 'UTC';
  const title = `${words.title} · ${whoseReview(content, language)}`;
  const when = [
    words.stamp.week(format.week(content.period.from)),
    format.period(content.period.from, content.period.to),
    words.stamp.figures(format.instant(content.data.figuresAt, zone)),
    words.stamp.lookedBack(format.period(content.lookedBack.from, content.lookedBack.to)),
  ].join(' · ');
  let pages = 0;
  const definition: TDocumentDefinitions = {
    pageSize: paper === 'A4' ? 'A4' : 'LETTER',
    pageMargins: [margin, margin - 4, margin, margin],
    language: locale,
    info: {
      title: inOurLetters(`${title}, ${format.week(content.period.from)}`),
      creationDate: new Date(content.data.figuresAt),
      producer: 'Escape Ledger',
      creator: 'Escape Ledger',
    },
    defaultStyle: { font: 'Roboto', fontSize: size, lineHeight: 1.08, color: colours.ink },
    styles: {
      title: { fontSize: size + 6, bold: true, color: colours.accent },
      part: { fontSize: size + 1.6, bold: true, color: colours.accent },
      head: { bold: true, color: colours.muted, fontSize: size - 0.6 },
      quiet: { color: colours.muted, fontSize: size - 0.9 },
    },
    footer: (page, of) => {
      pages = of;
      return {
        margin: [margin, 8, margin, 0],
        columns: [
          { text: inOurLetters(`${title} · ${format.week(content.period.from)}`), style: 'quiet' },
          { text: words.stamp.page(String(page), String(of)), style: 'quiet', alignment: 'right', width: 'auto' },
        ],
      };
    },
    content: [
      { text: inOurLetters(title), style: 'title' },
      { text: inOurLetters(when), margin: [0, 1, 0, 0] },
      { text: inOurLetters(stateOf(review, zone, language)), bold: true, margin: [0, 1, 0, 2] },
      ...partsOf({ content, language, room }),
      ...stamps(review, zone, language),
    ],
    pageBreakBefore: (node, nodes) =>
      node.headlineLevel !== undefined &&
      nodes.getFollowingNodesOnPage().length === 0 &&
      nodes.getNodesOnNextPage().length > 0,
  };
  const bytes = await makePdf(definition);
  return { bytes, pages };
}

/** The review as PDF of two pages at most. */
export async function printSheet(review: Review, locale: Locale, paper: Paper): Promise<Drawn> {
  const language = languageOf(locale);
  let drawn: Drawn | undefined;
  for (const room of rooms) {
    drawn = await draw(review, language, paper, room);
    if (drawn.pages <= mostPages) return drawn;
  }
  return drawn!;
}
