import { NumberInput, Select } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { awgName, awgToMm2, nearestAwg } from '#contracts/wire-size.ts';
import { useLocale } from '#web/ui/language.ts';
import classes from '../master-data.module.css';
import { useLabels } from '../use-labels.ts';
import type { FieldProps } from './field-input.tsx';

const gauges = Array.from({ length: 40 }, (_, index) => index - 3);
const round = (mm2: number) => Math.round(mm2 * 10_000) / 10_000;

/** A cross-section in mm², or taken from its gauge; the nearest gauge is shown beside whatever is typed. */
export const SectionField = ({ field, form, disabled, mine }: FieldProps) => {
  const { t } = useTranslation('master-data');
  const label = useLabels();
  const decimalSeparator = useLocale() === 'de' ? ',' : '.';
  const { name } = field;
  const value = form.values[name];
  const gauge = typeof value === 'number' && value > 0 ? nearestAwg(value) : null;
  return (
    <div className={classes.pair}>
      <NumberInput
        label={label(name)}
        description={mine === undefined ? undefined : t('hadEntered', { value: String(mine) })}
        required
        disabled={disabled}
        min={0}
        decimalScale={4}
        decimalSeparator={decimalSeparator}
        suffix=" mm²"
        hideControls
        {...form.getInputProps(name)}
      />
      <Select
        label={t('nearestAwg')}
        aria-label={t('awgOf', { field: label(name) })}
        data={gauges.map((awg) => ({ value: awgName(awg), label: `AWG ${awgName(awg)}` }))}
        value={gauge}
        disabled={disabled}
        allowDeselect={false}
        onChange={(chosen) => {
          const awg = gauges.find((it) => awgName(it) === chosen);
          if (awg !== undefined) form.setFieldValue(name, round(awgToMm2(awg)));
        }}
      />
    </div>
  );
};
