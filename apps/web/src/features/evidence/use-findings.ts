import { type FindingCode, type FindingPart, findingCatalogue, findingCodes } from '#contracts/finding-catalogue.ts';
import { findingTerms as de } from '#contracts/finding-terms.de.ts';
import { findingTerms as en } from '#contracts/finding-terms.en.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import { useLocale } from '#web/ui/language.ts';

const words: Record<Locale, typeof en> = { en, de };

/** Name of each finding and how to look, in the person's language. */
export const useFindingTerms = (): typeof en => words[useLocale()];

export const codesOf = (part: FindingPart): readonly FindingCode[] =>
  findingCodes.filter((code) => findingCatalogue[code].part === part);
