import { useTranslation } from 'react-i18next';
import type { messages } from './messages.en.ts';
import { spaced } from './words.ts';

/** Labels of kinds, actions and fields of the trail. */
export const useWords = () => {
  const { t, i18n } = useTranslation('audit');
  const known = (key: string) => i18n.exists(key, { ns: 'audit' });
  return {
    entity: (word: string): string =>
      known(`entity.${word}`) ? t(`entity.${word as keyof typeof messages.entity}`) : spaced(word),
    action: (words: string): string => {
      const word = words.replaceAll(' ', '_');
      return known(`action.${word}`) ? t(`action.${word as keyof typeof messages.action}`) : words;
    },
    field: (word: string): string =>
      known(`field.${word}`) ? t(`field.${word as keyof typeof messages.field}`) : spaced(word),
  };
};
