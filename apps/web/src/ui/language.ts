/** The person's language, as hooks: formats for figures, labels for the fixed vocabularies. */
import { useTranslation } from 'react-i18next';
import { type Format, formats } from '#contracts/shared/format.ts';
import { type Locale, locales } from '#contracts/shared/scalars.ts';
import { terms as de } from '#contracts/terms.de.ts';
import { terms as en, type Terms } from '#contracts/terms.en.ts';

const labels: Record<Locale, Terms> = { en, de };

export const useLocale = (): Locale => {
  const { i18n } = useTranslation();
  return locales.find((locale) => locale === i18n.language) ?? 'en';
};
export const useFormat = (): Format => formats(useLocale());
export const useTerms = (): Terms => labels[useLocale()];
