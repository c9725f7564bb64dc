import { Select } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { FieldName } from '#contracts/import-fields.ts';
import type { Import } from '#contracts/imports.ts';
import { fieldsOf, isRequired } from './fields.ts';
import { useImportTerms } from './queries.ts';

interface Props {
  kind: Import['kind'];
  /** The column's name. */
  column: string;
  value: FieldName | null;
  onChange: (field: FieldName | null) => void;
  /** Fields that are spoken for; they can still be chosen and then move here. */
  taken: ReadonlySet<FieldName>;
}

export const FieldSelect = ({ kind, column, value, onChange, taken }: Props) => {
  const { t } = useTranslation('imports');
  const terms = useImportTerms();
  const option = (field: FieldName) => ({
    value: field,
    label: taken.has(field) && field !== value ? t('takenField', { field: terms.field[field] }) : terms.field[field],
  });
  const fields = fieldsOf(kind);
  return (
    <Select
      aria-label={t('meansOf', { column })}
      placeholder={t('leftOut')}
      data={[
        { group: t('required'), items: fields.filter((field) => isRequired(kind, field)).map(option) },
        { group: t('optional'), items: fields.filter((field) => !isRequired(kind, field)).map(option) },
      ]}
      value={value}
      onChange={(field) => onChange(field as FieldName | null)}
      searchable
      clearable
      clearButtonProps={{ 'aria-label': t('leaveOut', { column }) }}
      nothingFoundMessage={t('noField')}
    />
  );
};
