import { useTranslation } from 'react-i18next';
import type { Effect } from '#contracts/effects.ts';
import type { Estimate, Interval } from '#contracts/shared/estimate.ts';
import { useFormat } from '#web/ui/language.ts';

/** Rates, limits and verdicts of an effect in words. */
export const useEffectText = () => {
  const { t } = useTranslation('actions');
  const format = useFormat();
  const limits = ({ low, high }: Pick<Interval, 'low' | 'high'>): string =>
    t('effect.limits', { low: format.significant(low), high: high === null ? '∞' : format.significant(high) });
  return {
    limits,
    /** Beyond a million the figure says no more. */
    evidence: (value: number): string =>
      value > 1e6 ? `> ${format.count(1e6)}` : value < 0.01 ? `< ${format.number(0.01)}` : format.significant(value),
    p: (value: number): string =>
      value < 0.0001
        ? `< ${format.number(0.0001, { maximumFractionDigits: 4 })}`
        : format.number(value, { maximumSignificantDigits: 2 }),
    rate: (rate: Estimate): string =>
      rate.value === null ? t('effect.noProduction') : t('effect.ppm', { rate: format.significant(rate.value) }),
    interval: (interval: Interval | null): string | null =>
      interval &&
      t('effect.interval', { confidence: format.percent(interval.confidence, 0), interval: limits(interval) }),
    verdict: (effect: Effect): string => {
      const parts = [
        effect.reason ? t(`effect.reason.${effect.reason === 'no_production' ? 'no_production' : 'no_reports'}`) : null,
        effect.excludedOn
          ? t('effect.excludedOn', { day: format.day(effect.excludedOn) })
          : effect.shownOn
            ? t('effect.shownOn', { day: format.day(effect.shownOn) })
            : effect.reason
              ? null
              : t('effect.notYet'),
        effect.fewerThanPlanned ? t('effect.fewer') : null,
      ];
      return parts.filter(Boolean).join(' ');
    },
  };
};
