import { Button, Group, Stack, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { notifications } from '@mantine/notifications';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { refusedFields } from '#web/ui/form.ts';
import { ProblemError } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { FieldInput } from './fields/field-input.tsx';
import { type KindView, type Row, toInput, toValues, type Values } from './kinds.ts';
import classes from './master-data.module.css';
import { createRow, rowQuery, updateRow, useForgetMasterData } from './queries.ts';
import { RetireButton } from './retire-button.tsx';
import { ServicedButton } from './serviced-button.tsx';
import { useFieldErrors } from './use-field-errors.ts';
import { useMayChange } from './use-may.ts';

interface Props {
  view: KindView;
  row?: Row;
  onDone: () => void;
}

export const RowForm = ({ view, row: opened, onDone }: Props) => {
  const { t } = useTranslation('master-data');
  const queries = useQueryClient();
  const forget = useForgetMasterData();
  const key = useRef(uuidv7());
  const [row, setRow] = useState(opened);
  /** What the person had typed when somebody else's change was loaded. */
  const [mine, setMine] = useState<Values>({});
  const check = useFieldErrors(view);
  const form = useForm<Values>({
    initialValues: row ? toValues(view, row) : view.blank,
    validate: (values) => check(toInput(view, values)),
  });
  const mayChange = useMayChange(view, form.values.plantId) && !row?.retiredAt;

  const save = useMutation({
    mutationFn: (values: Values) => {
      const input = toInput(view, values);
      return row ? updateRow(view, row, input) : createRow(view, input, key.current);
    },
    onSuccess: async () => {
      notifications.show({ withCloseButton: false, message: t('saved') });
      onDone();
      await forget();
    },
    onError: (error) => {
      key.current = uuidv7();
      form.setErrors(refusedFields(error));
    },
  });
  const lost = save.error instanceof ProblemError && save.error.problem.code === 'changed_meanwhile';
  const reload = async () => {
    const present = await queries.fetchQuery(rowQuery(view, row?.id ?? ''));
    const values = toValues(view, present);
    const differing = view.fields.filter(({ name }) => String(values[name]) !== String(form.values[name]));
    setMine(Object.fromEntries(differing.map(({ name }) => [name, form.values[name]])));
    setRow(present);
    form.setValues(values);
    save.reset();
  };

  return (
    <form className={classes.form} onSubmit={form.onSubmit((values) => save.mutate(values))} noValidate>
      <Stack>
        {row?.retiredAt && <Text fw={600}>{t('isRetired')}</Text>}
        {!mayChange && !row?.retiredAt && <Text size="sm">{t('readOnly')}</Text>}
        {Object.keys(mine).length > 0 && <Text role="status">{t('reloaded')}</Text>}
        {view.fields.map((field) => (
          <FieldInput
            key={field.name}
            field={field}
            form={form}
            fixed={field.type === 'plant' && row !== undefined}
            disabled={!mayChange}
            mine={mine[field.name]}
          />
        ))}
        {view.name === 'tools' && mayChange && <ServicedButton form={form} />}
        {save.isError && <ProblemNote error={save.error} />}
        {lost && (
          <Button variant="default" onClick={() => void reload()}>
            {t('loadPresent')}
          </Button>
        )}
        <Group justify="space-between">
          {row ? <RetireButton view={view} row={row} onDone={onDone} /> : <span />}
          {mayChange && (
            <Button type="submit" loading={save.isPending} disabled={lost}>
              {t('save')}
            </Button>
          )}
        </Group>
      </Stack>
    </form>
  );
};
