import { useTranslation } from 'react-i18next';
import { nearestAwg } from '#contracts/wire-size.ts';
import { useFormat } from '#web/ui/language.ts';

/** A cross-section in mm² with its nearest gauge: `0.5 mm² (AWG 20)`. */
export const useSection = (): ((mm2: number) => string) => {
  const { t } = useTranslation('master-data');
  const format = useFormat();
  return (mm2) => {
    const size = format.number(mm2, { maximumFractionDigits: 4 });
    const gauge = nearestAwg(mm2);
    return gauge === null ? t('mm2', { size }) : t('mm2Awg', { size, gauge });
  };
};
