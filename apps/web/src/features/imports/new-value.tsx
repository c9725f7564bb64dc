import { Button, Group, Modal, NumberInput, Select, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useTranslation } from 'react-i18next';
import type { Reference } from '#contracts/import-fields.ts';
import { checkedBy } from '#web/ui/form.ts';
import { useTerms } from '#web/ui/language.ts';
import { newForms } from './new-forms.ts';

interface Props {
  reference: Reference;
  raw: string;
  onMade: (input: Record<string, unknown>) => void;
  onClose: () => void;
}

/** New master data for an unknown value; made together with all others when they are kept. */
export const NewValue = ({ reference, raw, onMade, onClose }: Props) => {
  const { t } = useTranslation('imports');
  const terms = useTerms();
  const { fields, input } = newForms[reference];
  const check = checkedBy(input);
  const form = useForm<Record<string, unknown>>({
    initialValues: {
      code: raw,
      name: raw,
      ...Object.fromEntries(fields.map(({ name, type }) => [name, type === 'choice' ? null : ''])),
    },
    validate: (values) => Object.fromEntries(Object.entries(check(values)).filter(([path]) => path !== 'plantId')),
  });
  return (
    <Modal
      opened
      onClose={onClose}
      title={t('newTitle', { value: raw })}
      centered
      closeButtonProps={{ 'aria-label': t('undo') }}
    >
      <form onSubmit={form.onSubmit(onMade)}>
        <Stack>
          <TextInput label={t('newField.code')} required {...form.getInputProps('code')} />
          <TextInput label={t('newField.name')} required {...form.getInputProps('name')} />
          {fields.map(({ name, type, words, terms: vocabulary }) => {
            const props = { key: name, label: t(`newField.${name}`), required: true, ...form.getInputProps(name) };
            if (type === 'choice') {
              const labels = vocabulary ? (terms[vocabulary] as Record<string, string>) : {};
              return (
                <Select
                  {...props}
                  key={name}
                  data={(words ?? []).map((value) => ({ value, label: labels[value] ?? value }))}
                />
              );
            }
            return type === 'number' ? (
              <NumberInput {...props} key={name} hideControls decimalScale={4} />
            ) : (
              <TextInput {...props} key={name} />
            );
          })}
          <Group justify="flex-end">
            <Button type="submit">{t('makeNew')}</Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
};
