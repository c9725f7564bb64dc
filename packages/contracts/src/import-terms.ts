import { importTerms as de } from './import-terms.de.ts';
import { importTerms as en, type ImportTerms } from './import-terms.en.ts';
import type { Locale } from './shared/scalars.ts';

export const importTerms: Readonly<Record<Locale, ImportTerms>> = { en, de };
