import { SegmentedControl } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { type Locale, locales } from '#contracts/shared/scalars.ts';
import { setLanguage } from '#web/app/i18n.ts';
import { useLocale } from '#web/ui/language.ts';
import { languageNames } from '#web/ui/language-names.ts';

export const LanguageSwitch = () => {
  const { t } = useTranslation('session');
  return (
    <SegmentedControl
      aria-label={t('language')}
      value={useLocale()}
      onChange={(locale) => void setLanguage(locale as Locale)}
      data={locales.map((locale) => ({ value: locale, label: languageNames[locale] }))}
    />
  );
};
