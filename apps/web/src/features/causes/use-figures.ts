import { useTranslation } from 'react-i18next';
import type { Measure, Pareto } from '#contracts/analyses.ts';
import { useFormat } from '#web/ui/language.ts';

/** How the values of a measure are written: fully in tables, shortened on axes. */
export const useFigures = ({ measure, currency }: Pick<Pareto, 'measure' | 'currency'>) => {
  const { t } = useTranslation('causes');
  const format = useFormat();
  const asMoney: readonly Measure[] = ['booked', 'withEstimates'];
  const money = (amountMinor: number) => ({ amountMinor: Math.round(amountMinor), currency });
  if (asMoney.includes(measure))
    return {
      write: (value: number) => format.money(money(value)),
      axis: (value: number) => format.moneyShort(money(value)),
      unit: t(`unit.${measure}`, { currency }),
    };
  const write = measure === 'rate' ? format.significant : format.count;
  return { write, axis: write, unit: t(`unit.${measure}`, { currency }) };
};
