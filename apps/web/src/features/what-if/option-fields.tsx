import { Button, Checkbox, Fieldset, Group, MultiSelect, Select, TextInput } from '@mantine/core';
import type { UseFormReturnType } from '@mantine/form';
import { useTranslation } from 'react-i18next';
import { type PreventionKind, preventionKinds } from '#contracts/prevention.ts';
import { MoneyField } from '#web/ui/money-field.tsx';
import { type Draft, effectsOf, emptyEffect } from './draft.ts';
import { EffectRow } from './effect-row.tsx';
import classes from './what-if.module.css';

interface Props {
  form: UseFormReturnType<Draft>;
  index: number;
  currency: string;
}

export const OptionFields = ({ form, index, currency }: Props) => {
  const { t } = useTranslation('what-if');
  const path = `options.${index}`;
  const { options } = form.values;
  const option = options[index]!;
  const others = options.filter(({ key }) => key !== option.key);
  const chooseKind = (kind: string | null) => {
    if (kind === null) return;
    const named = preventionKinds.some((known) => option.name === t(`kind.${known}`)) || option.name === '';
    const typed = option.effects.some(({ low, likely, high }) => low !== '' || likely !== '' || high !== '');
    form.setFieldValue(path, {
      ...option,
      kind: kind as PreventionKind,
      name: named ? (kind === 'own' ? '' : t(`kind.${kind as PreventionKind}`)) : option.name,
      effects: typed ? option.effects : effectsOf(kind as PreventionKind),
    });
  };
  const money = (name: 'onceMinor' | 'yearlyMinor') => ({
    value: option[name],
    onChange: (minor: number | undefined) => form.setFieldValue(`${path}.${name}`, minor),
    error: form.errors[`${path}.${name}`],
  });
  return (
    <Fieldset className={classes.option} legend={t('option.legend', { number: index + 1 })}>
      <div className={classes.fields}>
        <Select
          label={t('option.kind')}
          data={preventionKinds.map((kind) => ({ value: kind, label: t(`kind.${kind}`) }))}
          value={option.kind}
          onChange={chooseKind}
          allowDeselect={false}
        />
        <TextInput label={t('option.name')} maxLength={120} required {...form.getInputProps(`${path}.name`)} />
        <MoneyField label={t('option.once')} currency={currency} min={0} {...money('onceMinor')} />
        <MoneyField label={t('option.yearly')} currency={currency} min={0} {...money('yearlyMinor')} />
      </div>
      {option.effects.map((_, place) => (
        <EffectRow
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no identity but their place
          key={place}
          form={form}
          path={`${path}.effects.${place}`}
          onDrop={option.effects.length > 1 ? () => form.removeListItem(`${path}.effects`, place) : undefined}
        />
      ))}
      <Group mt="sm" gap="md" align="flex-end">
        <Button
          variant="subtle"
          size="compact-md"
          onClick={() => form.insertListItem(`${path}.effects`, emptyEffect(null))}
          disabled={option.effects.length >= 9}
        >
          {t('effect.add')}
        </Button>
        <Checkbox label={t('option.chosen')} {...form.getInputProps(`${path}.chosen`, { type: 'checkbox' })} />
        {others.length > 0 && (
          <MultiSelect
            label={t('option.excludes')}
            data={others.map(({ key, name }) => ({ value: key, label: name || key }))}
            miw="14rem"
            clearable
            {...form.getInputProps(`${path}.excludes`)}
          />
        )}
        {others.length > 0 && (
          <Button variant="subtle" size="compact-md" onClick={() => form.removeListItem('options', index)}>
            {t('option.drop', { number: index + 1 })}
          </Button>
        )}
      </Group>
    </Fieldset>
  );
};
