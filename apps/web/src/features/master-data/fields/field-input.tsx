import { NumberInput, Select, Switch, TagsInput, TextInput } from '@mantine/core';
import type { UseFormReturnType } from '@mantine/form';
import { useTranslation } from 'react-i18next';
import type { ReplyTimes } from '#contracts/reply-times.ts';
import { papers } from '#contracts/shared/scalars.ts';
import { useLocale, useTerms } from '#web/ui/language.ts';
import { languageNames } from '#web/ui/language-names.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { MoneyField } from '#web/ui/money-field.tsx';
import type { Field, Values } from '../kinds.ts';
import { useLabels } from '../use-labels.ts';
import { weekdayName } from '../weekday.ts';
import { CurrencyField } from './currency-field.tsx';
import { FaceField } from './face-field.tsx';
import { PlantField } from './plant-field.tsx';
import { ReplyTimesField } from './reply-times-field.tsx';
import { SectionField } from './section-field.tsx';
import { ZoneField } from './zone-field.tsx';

export interface FieldProps {
  field: Field;
  form: UseFormReturnType<Values>;
  /** Set once, when the row was made. */
  fixed?: boolean;
  disabled: boolean;
  /** What the person had typed before a reload. */
  mine?: unknown;
}

/** The input that fits the field; every one labelled, with its refusal beside it. */
export const FieldInput = (props: FieldProps) => {
  const { t } = useTranslation('master-data');
  const label = useLabels();
  const terms = useTerms();
  const locale = useLocale();
  const plants = usePlants();
  const { field, form, disabled, mine } = props;
  const { name, type, optional = false } = field;
  const bound = form.getInputProps(name);
  const had = mine === undefined ? undefined : t('hadEntered', { value: String(mine) });
  const common = { label: label(name), required: !optional, disabled, description: had, ...bound };
  const [thousandSeparator, decimalSeparator] = locale === 'de' ? ['.', ','] : [',', '.'];
  const number = { hideControls: true, thousandSeparator, decimalSeparator, ...common };

  switch (type) {
    case 'plant':
      return <PlantField {...props} />;
    case 'currency':
      return <CurrencyField {...common} />;
    case 'zone':
      return <ZoneField {...common} />;
    case 'section':
      return <SectionField {...props} />;
    case 'face':
      return <FaceField {...props} />;
    case 'choice':
      return (
        <Select
          {...common}
          data={field.options.map((value) => ({ value, label: terms[field.words][value as never] }))}
          allowDeselect={false}
        />
      );
    case 'locale':
      return (
        <Select
          {...common}
          data={Object.entries(languageNames).map(([value, text]) => ({ value, label: text }))}
          allowDeselect={false}
        />
      );
    case 'paper':
      return <Select {...common} data={papers} allowDeselect={false} />;
    case 'replyTimes':
      return <ReplyTimesField value={bound.value as ReplyTimes} onChange={bound.onChange} disabled={disabled} />;
    case 'weekday':
      return (
        <Select
          {...common}
          data={[1, 2, 3, 4, 5, 6, 7].map((day) => ({ value: String(day), label: weekdayName(day, locale) }))}
          value={String(bound.value)}
          onChange={(day) => bound.onChange(Number(day))}
          allowDeselect={false}
        />
      );
    case 'switch':
      return (
        <Switch
          label={label(name)}
          description={had}
          disabled={disabled}
          {...form.getInputProps(name, { type: 'checkbox' })}
        />
      );
    case 'day':
      return <TextInput type="date" {...common} />;
    case 'count':
      return <NumberInput {...number} min={field.min ?? 0} allowDecimal={false} />;
    case 'measure':
      return <NumberInput {...number} min={0} decimalScale={field.decimals} suffix={` ${field.unit}`} />;
    case 'money': {
      const currency = plants.find(({ id }) => id === form.values.plantId)?.currency ?? '';
      const value = bound.value === '' ? undefined : (bound.value as number);
      return (
        <MoneyField
          {...common}
          currency={currency}
          value={value}
          onChange={(minor) => bound.onChange(minor ?? '')}
          disabled={disabled || currency === ''}
        />
      );
    }
    case 'tags':
      return <TagsInput {...common} description={had ?? t('tagsHelp')} clearable={false} />;
    default:
      return <TextInput {...common} autoComplete="off" />;
  }
};
