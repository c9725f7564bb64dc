/** A notice or mail in the reader's language; the same words in the product and in the mailbox. */
import type { NoticeKind } from './notice-kinds.ts';
import * as german from './notice-terms.de.ts';
import * as english from './notice-terms.en.ts';

export type Fact = string | number;

const dayFormat = /^\d{4}-\d{2}-\d{2}$/;

function wordOf(value: Fact, locale: string, known: Readonly<Record<string, string>>): string {
  if (typeof value === 'number') return new Intl.NumberFormat(locale).format(value);
  if (dayFormat.test(value))
    return new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(new Date(value));
  return value.startsWith('#') ? (known[value.slice(1)] ?? value) : value;
}

/** Days become dates of the language; `#word` becomes the word of `noticeFacts`; whatever is not given stays visible. */
export function fill(text: string, facts: Readonly<Record<string, Fact>>, locale: string): string {
  const { noticeFacts } = locale === 'de' ? german : english;
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = facts[name];
    return value === undefined ? whole : wordOf(value, locale, noticeFacts);
  });
}

/** Title and text of a notice. */
export function noticeWords(kind: NoticeKind, facts: Readonly<Record<string, Fact>>, locale: string) {
  const { title, text } = (locale === 'de' ? german : english).noticeTerms[kind];
  return { title: fill(title, facts, locale), text: fill(text, facts, locale) };
}

export const mailWords = (locale: string) => (locale === 'de' ? german : english).mailTerms;
