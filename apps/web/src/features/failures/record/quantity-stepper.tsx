import { ActionIcon, NumberInput } from '@mantine/core';
import { IconMinus, IconPlus } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import classes from './record.module.css';

interface Props {
  label: string;
  value: number;
  onChange: (value: number) => void;
}

/** How many, by thumb: mostly one. */
export const QuantityStepper = ({ label, value, onChange }: Props) => {
  const { t } = useTranslation('failures');
  return (
    <fieldset className={classes.choices}>
      <legend>{label}</legend>
      <div className={classes.stepper}>
        <ActionIcon
          size={56}
          variant="default"
          aria-label={t('record.less')}
          disabled={value <= 1}
          onClick={() => onChange(value - 1)}
        >
          <IconMinus aria-hidden />
        </ActionIcon>
        <NumberInput
          aria-label={label}
          value={value}
          onChange={(typed) => onChange(Math.max(1, Number(typed) || 1))}
          min={1}
          max={2_000_000_000}
          allowDecimal={false}
          hideControls
          size="lg"
          inputMode="numeric"
          className={classes.figure}
        />
        <ActionIcon size={56} variant="default" aria-label={t('record.more')} onClick={() => onChange(value + 1)}>
          <IconPlus aria-hidden />
        </ActionIcon>
      </div>
    </fieldset>
  );
};
