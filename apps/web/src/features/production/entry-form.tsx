import { ActionIcon, Button, Fieldset, Group, NumberInput, Select, Stack, Text, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { IconX } from '@tabler/icons-react';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { putProduction } from '#contracts/production.ts';
import { addDays } from '#contracts/shared/format.ts';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import { dayIn } from '#web/ui/period.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { RowSelect } from '#web/ui/row-select.tsx';
import classes from './production.module.css';
import { useForgetProduction } from './queries.ts';

interface Row {
  key: string;
  day: string;
  lineId: string | null;
  housingId: string | null;
  terminalId: string | null;
  units: number | '';
  terminals: number | '';
}
const blankRow = (day: string): Row => ({
  key: uuidv7(),
  day,
  lineId: null,
  housingId: null,
  terminalId: null,
  units: '',
  terminals: '',
});

/** Production of one plant, row by row. A row of the same day, line, housing and terminal is replaced. */
export const EntryForm = ({ onDone }: { onDone: () => void }) => {
  const { t } = useTranslation('production');
  const person = usePerson();
  const plants = usePlants().filter(({ id }) => may(person, 'production.write', id));
  const forget = useForgetProduction();
  const [chosen, setChosen] = useState<string | null>(null);
  const plant = plants.find(({ id }) => id === chosen) ?? (plants.length === 1 ? plants[0] : undefined);
  const yesterday = addDays(dayIn(plant?.zone ?? 'UTC', new Date()), -1);
  const form = useForm({ initialValues: { rows: [blankRow(yesterday)] } });
  const save = useMutation({
    mutationFn: (rows: Row[]) =>
      call(putProduction, {
        body: {
          rows: rows.map(({ key: _, units, terminals, ...row }) => ({
            ...row,
            plantId: plant?.id ?? '',
            units: Number(units),
            terminals: Number(terminals),
          })),
        },
        idempotencyKey: uuidv7(),
      }),
    onSuccess: async () => {
      form.setValues({ rows: [blankRow(yesterday)] });
      await forget();
    },
    onError: (error) => form.setErrors(refusedFields(error)),
  });

  const rowProps = (index: number, name: 'lineId' | 'housingId' | 'terminalId') => ({
    value: form.values.rows[index]?.[name] ?? null,
    onChange: (id: string | null) => form.setFieldValue(`rows.${index}.${name}`, id),
    error: form.errors[`rows.${index}.${name}`],
  });
  const addRow = () => {
    const last = form.values.rows.at(-1) ?? blankRow(yesterday);
    form.insertListItem('rows', { ...last, key: uuidv7(), units: '', terminals: '' });
  };

  return (
    <form className={classes.entry} onSubmit={form.onSubmit(({ rows }) => save.mutate(rows))}>
      <Stack>
        <Select
          label={t('plant')}
          data={plants.map((row) => ({ value: row.id, label: rowText(row) }))}
          value={plant?.id ?? null}
          onChange={setChosen}
          allowDeselect={false}
          required
          maw="20rem"
        />
        {plant &&
          form.values.rows.map((row, index) => (
            <Fieldset key={row.key} legend={t('row', { number: index + 1 })} className={classes.row}>
              <TextInput type="date" label={t('day')} required {...form.getInputProps(`rows.${index}.day`)} />
              <RowSelect resource="lines" label={t('line')} plant={plant.id} {...rowProps(index, 'lineId')} />
              <RowSelect resource="housings" label={t('housing')} {...rowProps(index, 'housingId')} />
              <RowSelect resource="terminals" label={t('terminal')} {...rowProps(index, 'terminalId')} />
              {(['units', 'terminals'] as const).map((name) => (
                <NumberInput
                  key={name}
                  label={t(name)}
                  min={0}
                  max={100_000_000}
                  allowDecimal={false}
                  hideControls
                  required
                  {...form.getInputProps(`rows.${index}.${name}`)}
                />
              ))}
              {form.values.rows.length > 1 && (
                <ActionIcon
                  variant="default"
                  size="lg"
                  aria-label={t('dropRow', { number: index + 1 })}
                  onClick={() => form.removeListItem('rows', index)}
                >
                  <IconX size={18} aria-hidden />
                </ActionIcon>
              )}
            </Fieldset>
          ))}
        {save.error && <ProblemNote error={save.error} />}
        {save.data && (
          <Text role="status">
            {t('saved', { added: save.data.added, changed: save.data.changed, same: save.data.same })}
          </Text>
        )}
        <Group>
          <Button type="submit" loading={save.isPending} disabled={!plant}>
            {t('save')}
          </Button>
          <Button variant="default" onClick={addRow} disabled={!plant}>
            {t('addRow')}
          </Button>
          <Button variant="subtle" onClick={onDone}>
            {t('close')}
          </Button>
        </Group>
      </Stack>
    </form>
  );
};
