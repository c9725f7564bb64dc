import { reviewTerms as german } from '#contracts/review-terms.de.ts';
import { reviewTerms as english, type ReviewTerms } from '#contracts/review-terms.en.ts';
import type { Change } from '#contracts/shared/change.ts';
import type { Estimate, Interval } from '#contracts/shared/estimate.ts';
import { type Format, formats } from '#contracts/shared/format.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import { terms as germanTerms } from '#contracts/terms.de.ts';
import { terms as englishTerms, type Terms } from '#contracts/terms.en.ts';

type Write = (value: number) => string;

/** Everything that turns a figure into words of one language. */
export interface Language {
  locale: Locale;
  words: ReviewTerms;
  terms: Terms;
  format: Format;
  interval(interval: Interval | null, write: Write): string;
  /** the figure, or in brackets why there is none */
  figure(estimate: Estimate, write: Write): string;
  /** the figure with its interval */
  sure(estimate: Estimate, write: Write): string;
  change(change: Change): string;
}

export function languageOf(locale: Locale): Language {
  const [words, terms] = locale === 'de' ? [german, germanTerms] : [english, englishTerms];
  const format = formats(locale);
  const interval = (given: Interval | null, write: Write) => {
    if (!given) return '';
    return given.high === null
      ? words.said.atLeast(write(given.low))
      : words.said.to(write(given.low), write(given.high));
  };
  const figure = (estimate: Estimate, write: Write) =>
    estimate.value === null ? `(${terms.reasonShort[estimate.reason]})` : write(estimate.value);
  return {
    locale,
    words,
    terms,
    format,
    interval,
    figure,
    sure: (estimate, write) =>
      estimate.value === null
        ? figure(estimate, write)
        : `${write(estimate.value)} (${interval(estimate.interval, write)})`,
    change(change) {
      if (change.reason !== null) return `(${terms.reasonShort[change.reason]})`;
      const limits = interval(
        {
          ...change.interval,
          low: change.interval.low - 1,
          high: change.interval.high === null ? null : change.interval.high - 1,
        },
        format.change,
      );
      const moved = change.ratio === null ? words.change.new : format.change(change.ratio - 1);
      const beyond = change.verdict === 'within_noise' ? words.change.noise : words.change[change.verdict];
      return `${moved} (${limits}), ${beyond}`;
    },
  };
}
