import { Button, Group, Modal, NumberInput, Select, Stack, Textarea, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type ActionKind, type ActionOf, actionKinds } from '#contracts/actions.ts';
import { preventionKinds } from '#contracts/prevention.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import type { Origin } from './actions-panel.tsx';
import { colleaguesQuery, useActionWrites } from './queries.ts';
import { useActionTerms } from './use-terms.ts';

interface Props {
  onDone: () => void;
  /** The action to change; without it a new one is opened. */
  action?: ActionOf;
  plantId?: string;
  origin?: Origin;
  kind?: ActionKind | undefined;
}

const day = (ahead: number): string => new Date(Date.now() + ahead * 86_400_000).toISOString().slice(0, 10);

/** Opens an action, or changes what was agreed. What would count as proof is stated on its page. */
export const ActionForm = ({ onDone, action, plantId, origin, kind }: Props) => {
  const { t } = useTranslation('actions');
  const terms = useActionTerms();
  const person = usePerson();
  const plants = usePlants().filter(({ id }) => may(person, 'actions.write', id));
  const [key] = useState(() => crypto.randomUUID());
  const { create, update } = useActionWrites();
  const form = useForm({
    initialValues: {
      plantId: action?.plantId ?? plantId ?? (plants.length === 1 ? plants[0]!.id : ''),
      kind: action?.kind ?? kind ?? ('corrective' as ActionKind),
      title: action?.title ?? '',
      description: action?.description ?? '',
      ownerId: action?.ownerId ?? '',
      dueOn: action?.dueOn ?? day(14),
      effortHours: action?.effortHours ?? ('' as number | ''),
      prevention: action?.prevention ?? '',
    },
    validate: {
      plantId: (value) => (value === '' ? t('form.missing') : null),
      title: (value) => (value.trim() === '' ? t('form.missing') : null),
      ownerId: (value) => (value === '' ? t('form.missing') : null),
      dueOn: (value) => (value === '' ? t('form.missing') : null),
    },
  });
  const chosen = form.values.plantId;
  const colleagues = useQuery({ ...colleaguesQuery(chosen), enabled: chosen !== '' }).data ?? [];

  const save = (values: typeof form.values) => {
    const body = {
      kind: values.kind,
      title: values.title,
      description: values.description || null,
      ownerId: values.ownerId,
      dueOn: values.dueOn,
      effortHours: values.effortHours === '' ? null : Number(values.effortHours),
      cost: action?.cost ?? null,
      prevention: (values.prevention || null) as ActionOf['prevention'],
    };
    if (action) update.mutate({ action, body }, { onSuccess: onDone });
    else create.mutate({ body: { ...body, ...origin, plantId: values.plantId }, key }, { onSuccess: onDone });
  };
  const error = create.error ?? update.error;

  return (
    <Modal
      opened
      onClose={onDone}
      title={t(action ? 'form.change' : 'new')}
      size="lg"
      closeButtonProps={{ 'aria-label': t('form.close') }}
    >
      <form onSubmit={form.onSubmit(save)} noValidate>
        <Stack>
          {!action && !plantId && (
            <Select
              label={terms.field.plant}
              required
              data={plants.map(({ id, code }) => ({ value: id, label: code }))}
              {...form.getInputProps('plantId')}
            />
          )}
          <TextInput label={terms.field.title} required maxLength={120} {...form.getInputProps('title')} />
          <Select
            label={terms.field.kind}
            required
            allowDeselect={false}
            data={actionKinds.map((value) => ({ value, label: terms.kind[value] }))}
            {...form.getInputProps('kind')}
          />
          <Textarea
            label={t('form.description')}
            autosize
            minRows={2}
            maxLength={10_000}
            {...form.getInputProps('description')}
          />
          <Select
            label={terms.field.owner}
            required
            searchable
            data={colleagues.map(({ id, name }) => ({ value: id, label: name }))}
            nothingFoundMessage={t('form.nobody')}
            {...form.getInputProps('ownerId')}
          />
          <TextInput type="date" label={terms.field.dueOn} required {...form.getInputProps('dueOn')} />
          <NumberInput label={t('form.effort')} min={0} max={100_000} {...form.getInputProps('effortHours')} />
          <Select
            label={t('form.prevention')}
            description={t('form.preventionHelp')}
            clearable
            data={preventionKinds.map((value) => ({ value, label: t(`prevention.${value}`) }))}
            {...form.getInputProps('prevention')}
          />
          {error && <ProblemNote error={error} />}
          <Group justify="flex-end">
            <Button type="submit" loading={create.isPending || update.isPending}>
              {t(action ? 'form.save' : 'new')}
            </Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
};
