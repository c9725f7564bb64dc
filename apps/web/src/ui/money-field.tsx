import { NumberInput, type NumberInputProps } from '@mantine/core';
import { minorDigits } from '#contracts/shared/currency.ts';

interface Props extends Omit<NumberInputProps, 'value' | 'onChange' | 'defaultValue'> {
  currency: string;
  /** Integer minor units; undefined while empty. */
  value: number | undefined;
  onChange: (amountMinor: number | undefined) => void;
}

/** People type major units (12.50), the form holds minor units (1250). */
export const MoneyField = ({ currency, value, onChange, ...input }: Props) => {
  const digits = minorDigits(currency);
  return (
    <NumberInput
      {...input}
      value={value === undefined ? '' : value / 10 ** digits}
      onChange={(major) => onChange(major === '' ? undefined : Math.round(Number(major) * 10 ** digits))}
      decimalScale={digits}
      suffix={` ${currency}`}
      hideControls
    />
  );
};
