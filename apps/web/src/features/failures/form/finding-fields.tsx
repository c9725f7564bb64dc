import { Checkbox, Fieldset, NumberInput, Select, SimpleGrid, Textarea } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { dispositions, effects, lockStates } from '#contracts/taxonomy.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { useTerms } from '#web/ui/language.ts';
import { numberProps, type ReportFormApi, textProps } from './field-props.ts';

const optionsOf = (labels: Readonly<Record<string, string>>, words: readonly string[]) =>
  words.map((word) => ({ value: word, label: labels[word] ?? word }));

/** What was found, how much of it, and what became of the parts. */
export const FindingFields = ({ form }: { form: ReportFormApi }) => {
  const { t } = useTranslation('failures');
  const terms = useTerms();
  const { effect, safety } = form.values;
  return (
    <Fieldset legend={t('form.finding')}>
      <SimpleGrid cols={{ base: 1, xs: 2, md: 3 }}>
        <Select
          label={t('field.effect')}
          data={optionsOf(terms.effect, effects)}
          clearable
          {...form.getInputProps('effect')}
        />
        <NumberInput
          label={t('field.quantityFound')}
          min={1}
          allowDecimal={false}
          required
          {...numberProps(form, 'quantityFound')}
        />
        <NumberInput
          label={t('field.quantityInspected')}
          min={1}
          allowDecimal={false}
          {...numberProps(form, 'quantityInspected')}
        />
        <Select
          label={t('field.lockState')}
          data={optionsOf(terms.lockState, lockStates)}
          allowDeselect={false}
          {...form.getInputProps('lockState')}
        />
        <Select
          label={t('field.disposition')}
          data={optionsOf(terms.disposition, dispositions)}
          allowDeselect={false}
          {...form.getInputProps('disposition')}
        />
        <Checkbox
          label={t('field.safety')}
          description={t('form.safetyHelp')}
          {...form.getInputProps('safety', { type: 'checkbox' })}
        />
      </SimpleGrid>
      <Textarea label={t('field.note')} autosize minRows={3} maxLength={10_000} mt="md" {...textProps(form, 'note')} />
      {(safety || effect === 'heating') && (
        <Cautions
          about={[...(safety ? (['safety'] as const) : []), ...(effect === 'heating' ? (['heating'] as const) : [])]}
        />
      )}
    </Fieldset>
  );
};
