/** Languages: one namespace per feature folder, loaded once per language. */
import { createInstance } from 'i18next';
import { initReactI18next } from 'react-i18next';
import { config } from 'zod';
import { type Locale, locales } from '#contracts/shared/scalars.ts';

const catalogues = {
  en: () => import('./catalogue.en.ts'),
  de: () => import('./catalogue.de.ts'),
} satisfies Record<Locale, unknown>;

export const i18n = createInstance();

const remembered = 'escape-ledger.language';
const isLocale = (word: string | null | undefined): word is Locale => locales.some((locale) => locale === word);

const preferred = (): Locale => {
  const own = localStorage.getItem(remembered);
  const wanted = [own, ...navigator.languages.map((tag) => tag.slice(0, 2))].find(isLocale);
  return wanted ?? 'en';
};

export const setLanguage = async (locale: Locale): Promise<void> => {
  const { messages, validation } = await catalogues[locale]();
  config(validation);
  for (const [namespace, words] of Object.entries(messages))
    i18n.addResourceBundle(locale, namespace, words, true, true);
  await i18n.changeLanguage(locale);
  document.documentElement.lang = locale;
  localStorage.setItem(remembered, locale);
};

export const startLanguages = async (): Promise<void> => {
  await i18n.use(initReactI18next).init({
    lng: preferred(),
    fallbackLng: false,
    defaultNS: 'ui',
    ns: [],
    resources: {},
    interpolation: { escapeValue: false },
    returnNull: false,
    react: { useSuspense: false },
  });
  await setLanguage(preferred());
};
