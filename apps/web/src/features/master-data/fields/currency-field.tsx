import { Select, type SelectProps } from '@mantine/core';
import { currencies } from '#contracts/shared/currency.ts';
import { useLocale } from '#web/ui/language.ts';

/** Currencies in use, found by code or name. */
export const CurrencyField = (props: SelectProps) => {
  const names = new Intl.DisplayNames(useLocale(), { type: 'currency' });
  const data = currencies.map((value) => ({ value, label: `${value} · ${names.of(value)}` }));
  return <Select {...props} data={data} value={props.value || null} searchable allowDeselect={false} />;
};
