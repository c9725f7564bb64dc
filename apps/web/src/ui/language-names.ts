import type { Locale } from '#contracts/shared/scalars.ts';

/** Each language by its own name. */
export const languageNames: Record<Locale, string> = { en: 'English', de: 'Deutsch' };
