import { useTranslation } from 'react-i18next';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';

const vocabularies = {
  cause: 'cause',
  subCause: 'subCause',
  origin: 'stage',
  found: 'stage',
  common: 'stage',
  stage: 'stage',
  disposition: 'disposition',
  effect: 'effect',
  source: 'source',
  lockState: 'lockState',
  retentionStyle: 'retentionStyle',
  secondaryLock: 'secondaryLockKind',
  role: 'role',
  category: 'costCategory',
  basis: 'costBasis',
} as const;

/** A value of the trail in words: vocabularies by label, plants by name, days and instants by language. */
export const useValueText = (): ((field: string, value: unknown, plantId: string | null) => string) => {
  const { t } = useTranslation('audit');
  const terms = useTerms();
  const format = useFormat();
  const plants = new Map(usePlants().map((plant) => [plant.id, plant]));

  const say = (field: string, value: unknown, plantId: string | null): string => {
    const currency = plants.get(plantId ?? '')?.currency;
    if (value === null || value === undefined || value === '') return t('nothing');
    if (Array.isArray(value))
      return value.length === 0 ? t('nothing') : value.map((it) => say(field, it, plantId)).join(', ');
    if (typeof value === 'object')
      return Object.entries(value)
        .filter(([, it]) => it !== null)
        .map(([name, it]) => say(name, it, plantId))
        .join(' · ');
    if (typeof value === 'boolean') return value ? t('yes') : t('no');
    if (typeof value === 'number' && currency && field.endsWith('Minor') && field !== 'amountMinor')
      return format.money({ amountMinor: value, currency });
    if (typeof value === 'number') return format.number(value, { maximumFractionDigits: 4 });
    const text = String(value);
    if (field === 'plantId') return plants.get(text)?.name ?? text;
    if (field in vocabularies) {
      const labels: Readonly<Record<string, string>> = terms[vocabularies[field as keyof typeof vocabularies]];
      return labels[text] ?? text;
    }
    if (/^\d{4}-\d\d-\d\d$/.test(text)) return format.day(text);
    return /^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(text) ? format.instant(text) : text;
  };
  return say;
};
