import { reviewTerms as de } from '#contracts/review-terms.de.ts';
import { reviewTerms as en, type ReviewTerms } from '#contracts/review-terms.en.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import { useLocale } from '#web/ui/language.ts';

const words: Record<Locale, ReviewTerms> = { en, de };

/** The words that the page shares with the printed sheet. */
export const useReviewWords = (): ReviewTerms => words[useLocale()];
