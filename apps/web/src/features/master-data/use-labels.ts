import { useTranslation } from 'react-i18next';
import type { messages } from './messages.en.ts';

/** The label of a field or column, by its name. */
export const useLabels = (): ((name: string) => string) => {
  const { t } = useTranslation('master-data');
  return (name) => t(`field.${name as keyof typeof messages.field}`);
};
