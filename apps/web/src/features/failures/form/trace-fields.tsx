import { Fieldset, SimpleGrid, TextInput } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { RowSelect } from '#web/ui/row-select.tsx';
import { type ReportFormApi, rowProps, textProps } from './field-props.ts';

const marks = [
  'reelLot',
  'housingLot',
  'serialFrom',
  'serialTo',
  'fixturePosition',
  'customerRef',
  'externalRef',
] as const;

/** Lots, serials and references that trace the fault further. */
export const TraceFields = ({ form }: { form: ReportFormApi }) => {
  const { t } = useTranslation('failures');
  return (
    <Fieldset legend={t('form.trace')}>
      <SimpleGrid cols={{ base: 1, xs: 2, md: 3 }}>
        <RowSelect resource="customers" label={t('field.customer')} {...rowProps(form, 'customerId')} />
        {marks.map((name) => (
          <TextInput key={name} label={t(`field.${name}`)} maxLength={80} {...textProps(form, name)} />
        ))}
      </SimpleGrid>
    </Fieldset>
  );
};
