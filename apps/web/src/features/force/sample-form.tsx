import { Button, Group, NumberInput, SegmentedControl, Select, Stack, Text, Textarea, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { createForce, type ForceSample, updateForce } from '#contracts/force.ts';
import { type ForceKind, type ForceUnit, forceKinds, forceUnits } from '#contracts/taxonomy.ts';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { useTerms } from '#web/ui/language.ts';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import { dayIn } from '#web/ui/period.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { RowSelect } from '#web/ui/row-select.tsx';
import classes from './force.module.css';
import { useForgetForces } from './queries.ts';
import { readValues } from './values.ts';
import { ValuesRead } from './values-read.tsx';

interface Props {
  /** To be corrected; without it a new one is entered. */
  sample?: ForceSample;
  terminalId?: string;
  kind?: ForceKind;
  onDone: () => void;
}

/** Entry of a sample: values typed one a line, or a column pasted from a sheet. */
export const SampleForm = ({ sample, terminalId, kind, onDone }: Props) => {
  const { t } = useTranslation('force');
  const terms = useTerms();
  const person = usePerson();
  const plants = usePlants().filter(({ id }) => may(person, 'force.write', id));
  const forget = useForgetForces();
  const form = useForm({
    initialValues: {
      plantId: sample?.plantId ?? (plants.length === 1 ? (plants[0]?.id ?? '') : ''),
      kind: sample?.kind ?? kind ?? ('retention' as ForceKind),
      day: sample?.day ?? dayIn(plants[0]?.zone ?? 'UTC', new Date()),
      terminalId: sample?.terminalId ?? terminalId ?? (null as string | null),
      toolId: sample?.toolId ?? (null as string | null),
      housingId: sample?.housingId ?? (null as string | null),
      wireId: sample?.wireId ?? (null as string | null),
      reference: sample?.reference ?? '',
      unit: sample?.unit ?? ('N' as ForceUnit),
      minimum: sample?.minimum ?? ('' as number | ''),
      text: sample?.values.join('\n') ?? '',
      note: sample?.note ?? '',
    },
  });
  const read = readValues(form.values.text);
  const part = (name: 'terminalId' | 'toolId' | 'housingId' | 'wireId') => ({
    value: form.values[name],
    onChange: (id: string | null) => form.setFieldValue(name, id),
    error: form.errors[name],
  });
  const save = useMutation({
    mutationFn: ({ text, reference, minimum, note, terminalId: terminal, ...same }: typeof form.values) => {
      const body = {
        ...same,
        terminalId: terminal ?? '',
        reference: reference.trim() || null,
        minimum: minimum === '' ? null : minimum,
        note: note.trim() || null,
        values: readValues(text).values,
      };
      return sample
        ? call(updateForce, { params: { id: sample.id }, body, version: sample.version })
        : call(createForce, { body, idempotencyKey: uuidv7() });
    },
    onSuccess: async () => {
      if (!sample) form.setFieldValue('text', '');
      await forget();
      if (sample) onDone();
    },
    onError: (error) => form.setErrors(refusedFields(error)),
  });
  const ready = form.values.plantId && form.values.terminalId && read.values.length > 0 && !read.wrong && !read.tooMany;
  return (
    <form className={sample ? undefined : classes.entry} onSubmit={form.onSubmit((draft) => save.mutate(draft))}>
      <Stack>
        <Group>
          <SegmentedControl
            aria-label={t('kind')}
            data={forceKinds.map((value) => ({ value, label: terms.forceKind[value] }))}
            {...form.getInputProps('kind')}
          />
          <SegmentedControl aria-label={t('unit')} data={[...forceUnits]} {...form.getInputProps('unit')} />
        </Group>
        <div className={classes.fields}>
          <Select
            label={t('plant')}
            data={plants.map((row) => ({ value: row.id, label: rowText(row) }))}
            allowDeselect={false}
            required
            disabled={sample !== undefined}
            {...form.getInputProps('plantId')}
          />
          <TextInput type="date" label={t('day')} required {...form.getInputProps('day')} />
          <RowSelect resource="terminals" label={t('terminal')} required {...part('terminalId')} />
          <RowSelect resource="tools" label={t('tool')} plant={form.values.plantId || null} {...part('toolId')} />
          <RowSelect resource="housings" label={t('housing')} {...part('housingId')} />
          <RowSelect resource="wires" label={t('wire')} {...part('wireId')} />
          <TextInput
            label={t('reference')}
            description={t('referenceHelp')}
            maxLength={80}
            {...form.getInputProps('reference')}
          />
          <NumberInput
            label={t('minimumIn', { unit: form.values.unit })}
            description={t('minimumHelp')}
            min={0}
            max={10_000}
            hideControls
            {...form.getInputProps('minimum')}
          />
        </div>
        <Textarea
          label={t('valuesIn', { unit: form.values.unit })}
          description={t('valuesHelp')}
          autosize
          minRows={5}
          maxRows={14}
          required
          inputMode="decimal"
          {...form.getInputProps('text')}
          error={
            form.errors.values ??
            (read.wrong ? t('wrongValue', { value: read.wrong }) : read.tooMany ? t('tooManyValues') : null)
          }
        />
        <ValuesRead read={read} unit={form.values.unit} minimum={form.values.minimum} />
        <TextInput label={t('note')} maxLength={1000} {...form.getInputProps('note')} />
        {save.error && <ProblemNote error={save.error} />}
        {save.isSuccess && !sample && <Text role="status">{t('saved')}</Text>}
        <Group>
          <Button type="submit" loading={save.isPending} disabled={!ready}>
            {t('save')}
          </Button>
          <Button variant="subtle" onClick={onDone}>
            {t('close')}
          </Button>
        </Group>
      </Stack>
    </form>
  );
};
