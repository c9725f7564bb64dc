import { Button, Select, Stack, Text, TextInput, Title } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { FieldName } from '#contracts/import-fields.ts';
import type { Import, Mapping } from '#contracts/imports.ts';
import { useTerms } from '#web/ui/language.ts';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { fieldsOf, isRequired, neededFields, typeOf } from './fields.ts';
import classes from './imports.module.css';
import { useImportTerms } from './queries.ts';
import { wordOptions } from './words.ts';

interface Props {
  kind: Import['kind'];
  mapping: Mapping;
  onChange: (mapping: Mapping) => void;
}

/** One value for all rows, for what the file has no column for or leaves blank. */
export const FixedValues = ({ kind, mapping, onChange }: Props) => {
  const { t } = useTranslation('imports');
  const terms = useImportTerms();
  const needed = neededFields(kind, mapping);
  const shown = fieldsOf(kind).filter(
    (field) => (needed.includes(field) && !mapping.columns.includes(field)) || mapping.fixed[field] !== undefined,
  );
  const others = fieldsOf(kind).filter((field) => !shown.includes(field) && !mapping.columns.includes(field));
  const set = (field: FieldName, value: string | null) => {
    const { [field]: _, ...rest } = mapping.fixed;
    onChange({ ...mapping, fixed: value === null ? rest : { ...rest, [field]: value } });
  };
  return (
    <section>
      <Title order={2}>{t('fixed')}</Title>
      <Text size="sm" mb="sm">
        {t('fixedHelp')}
      </Text>
      <Stack>
        <div className={classes.fields}>
          {shown.map((field) => (
            <FixedValue
              key={field}
              kind={kind}
              field={field}
              value={mapping.fixed[field] ?? ''}
              onChange={(value) => set(field, value)}
              needed={needed.includes(field)}
            />
          ))}
        </div>
        <Select
          label={t('fixAnother')}
          placeholder={t('chooseField')}
          data={others.map((field) => ({ value: field, label: terms.field[field] }))}
          value={null}
          onChange={(field) => field && set(field as FieldName, '')}
          searchable
          maw="20rem"
        />
      </Stack>
    </section>
  );
};

interface ValueProps {
  kind: Import['kind'];
  field: FieldName;
  value: string;
  onChange: (value: string | null) => void;
  needed: boolean;
}

const FixedValue = ({ kind, field, value, onChange, needed }: ValueProps) => {
  const { t } = useTranslation('imports');
  const terms = useImportTerms();
  const words = useTerms();
  const person = usePerson();
  const plants = usePlants().filter(({ id }) => may(person, 'imports.run', id));
  const type = typeOf(kind, field);
  const label = terms.field[field];
  const common = { label, required: needed, description: field === 'quantityFound' ? t('oneEach') : undefined };
  const options =
    type?.type === 'word'
      ? wordOptions(type.of, words, [t('yes'), t('no')])
      : field === 'plant'
        ? plants.map((plant) => ({ value: plant.code, label: rowText(plant) }))
        : null;
  return (
    <div>
      {options ? (
        <Select {...common} data={options} value={value || null} onChange={(word) => onChange(word ?? '')} searchable />
      ) : (
        <TextInput
          {...common}
          value={value}
          onChange={(event) => onChange(event.currentTarget.value)}
          maxLength={200}
        />
      )}
      {!isRequired(kind, field) && !needed && (
        <Button variant="subtle" size="compact-sm" onClick={() => onChange(null)}>
          {t('unfix', { field: label })}
        </Button>
      )}
    </div>
  );
};
