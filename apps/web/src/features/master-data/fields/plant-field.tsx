import { Select } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { useLabels } from '../use-labels.ts';
import type { FieldProps } from './field-input.tsx';

/** The plant of a new row, among those where the person may write; an existing row stays where it is. */
export const PlantField = ({ field, form, fixed = false, disabled }: FieldProps) => {
  const { t } = useTranslation('master-data');
  const label = useLabels();
  const person = usePerson();
  const plants = usePlants().filter(({ id }) => fixed || may(person, 'plantData.write', id));
  return (
    <Select
      label={label(field.name)}
      description={fixed ? t('plantStays') : undefined}
      data={plants.map((plant) => ({ value: plant.id, label: rowText(plant) }))}
      allowDeselect={false}
      required
      searchable={plants.length > 10}
      disabled={disabled || fixed}
      {...form.getInputProps(field.name)}
    />
  );
};
