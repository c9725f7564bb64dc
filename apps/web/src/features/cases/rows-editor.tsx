import { ActionIcon, Button, Stack } from '@mantine/core';
import { IconPlus, IconTrash } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import type { Case } from '#contracts/cases.ts';
import classes from './cases.module.css';
import { FieldInput } from './field-input.tsx';
import { newRowId } from './new-row-id.ts';
import type { Field } from './part-fields.ts';
import { useCaseTerms } from './use-case-terms.ts';

type Row = { id: string } & Record<string, unknown>;
interface Props {
  field: Extract<Field, { type: 'rows' }>;
  value: readonly Row[];
  onChange: (rows: Row[]) => void;
  of: Case;
}

/** Rows that are added, changed and taken away; each has its own id, so that two people's rows can be told apart. */
export const RowsEditor = ({ field, value, onChange, of }: Props) => {
  const { t } = useTranslation('cases');
  const label = useCaseTerms().document[field.label];
  const change = (id: string, name: string, next: unknown) =>
    onChange(value.map((row) => (row.id === id ? { ...row, [name]: next } : row)));
  return (
    <Stack gap="sm">
      {value.map((row, place) => (
        <fieldset key={row.id} className={classes.row}>
          <legend>{t('row', { label, number: place + 1 })}</legend>
          <div className={classes.rowFields} data-columns={Math.min(field.fields.length, 5)}>
            {field.fields.map((it) => (
              <FieldInput
                key={it.name}
                field={it}
                value={row[it.name]}
                onChange={(next) => change(row.id, it.name, next)}
                of={of}
              />
            ))}
          </div>
          <ActionIcon
            variant="subtle"
            size="lg"
            className="no-print"
            aria-label={t('dropRow', { label, number: place + 1 })}
            onClick={() => onChange(value.filter(({ id }) => id !== row.id))}
          >
            <IconTrash size={18} aria-hidden />
          </ActionIcon>
        </fieldset>
      ))}
      <div>
        <Button
          variant="default"
          className="no-print"
          leftSection={<IconPlus size={16} aria-hidden />}
          onClick={() => onChange([...value, { ...field.blank, id: newRowId() }])}
        >
          {t('addRow', { label })}
        </Button>
      </div>
    </Stack>
  );
};
