import { useTranslation } from 'react-i18next';
import type { Captions } from '#web/ui/chart/figure.tsx';
import { useFormat } from '#web/ui/language.ts';
import type { Period } from '#web/ui/period.ts';
import { fieldNames } from './fields.ts';
import { useFilter } from './use-filter.ts';
import { useValueText } from './value-text.ts';

interface Head {
  period: Period;
  plants: readonly { code: string }[];
}

/** Period and filter of an answer in words, for the captions below figures. */
export const useCaptions = (head: Head): Pick<Captions, 'period' | 'filter'> => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  const [filter] = useFilter();
  const text = useValueText();
  const plants = format.list(head.plants.map(({ code }) => code));
  const parts = fieldNames
    .filter((name) => filter[name] !== undefined)
    .map((name) => `${t(`filter.field.${name}`)} ${text(name)}`);
  return { period: format.period(head.period.from, head.period.to), filter: [plants, ...parts].join(' · ') };
};
