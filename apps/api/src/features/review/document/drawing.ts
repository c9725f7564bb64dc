import type { Content } from 'pdfmake/interfaces.js';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { ReviewPart } from '#contracts/review-terms.en.ts';
import type { Language } from './language.ts';
import { type Cell, type Column, line, part, quiet } from './layout.ts';

/** How many rows each part may have before it says how many more there are. */
export type Room = Readonly<Record<'promises' | 'signals' | 'rows' | 'decisions', number>>;

export interface Sheet {
  content: ReviewContent;
  language: Language;
  room: Room;
}

export const kept = <Row>(rows: readonly Row[], room: number) => rows.slice(0, room);
export const rest = ({ words, format }: Language, all: number, room: number): Content[] =>
  all > room ? [quiet(words.said.more(format.count(all - room)))] : [];

export const section = ({ words }: Language, name: ReviewPart, body: readonly Content[]): Content =>
  part(words.part[name], words.about[name], body.length > 0 ? body : [line(words.nothing[name])]);

const whole: readonly string[] = ['number', 'due', 'complaint', 'report'];
export const cols = (
  { words: { column } }: Language,
  ...columns: [keyof typeof column, Column['width'], boolean?][]
): Column[] =>
  columns.map(([name, width, end]) => ({
    title: column[name],
    width,
    ...(end && { end }),
    ...(whole.includes(name) && { whole: true }),
  }));

export const money =
  ({ format }: Language, currency: string, estimated: boolean) =>
  (amountMinor: number): Cell =>
    amountMinor === 0
      ? '–'
      : { text: format.moneyShort({ amountMinor: Math.round(amountMinor), currency }), estimated };
