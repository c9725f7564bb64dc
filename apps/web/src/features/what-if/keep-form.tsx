import { Button, Group, Stack, Text, Textarea, TextInput, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { createWhatIf, updateWhatIf, type WhatIf, type WhatIfInput, type WhatIfResult } from '#contracts/what-if.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { call, queryString } from '#web/ui/http.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetWhatIfs } from './queries.ts';
import { whatIfRoute } from './routes.ts';

interface Props {
  computed: { input: WhatIfInput; filter: FilterValues; result: WhatIfResult };
  kept: WhatIf | undefined;
}

/** Keeps what was computed with all its inputs; the period is pinned to the one shown. */
export const KeepForm = ({ computed: { input, filter, result }, kept }: Props) => {
  const { t } = useTranslation('what-if');
  const person = usePerson();
  const forget = useForgetWhatIfs();
  const navigate = useNavigate();
  const [idempotencyKey] = useState(() => uuidv7());
  const plant = result.plants.length === 1 ? result.plants[0] : undefined;
  const form = useForm({
    initialValues: { name: kept?.name ?? '', note: kept?.note ?? '' },
    validate: { name: (name) => (name.trim() === '' ? t('keep.missing') : null) },
  });
  const save = useMutation({
    mutationFn: ({ name, note }: { name: string; note: string }) => {
      const query = queryString({ ...filter, ...result.period, plant: plant?.id, currency: result.currency }).slice(1);
      const body = { name, note: note.trim() === '' ? null : note, query, input };
      return kept
        ? call(updateWhatIf, { params: { id: kept.id }, version: kept.version, body })
        : call(createWhatIf, { body, idempotencyKey });
    },
    onSuccess: async ({ id }) => {
      await forget();
      await navigate({ to: whatIfRoute.to, params: { id } });
    },
  });
  if (!plant || (kept && kept.plantId !== plant.id))
    return <Text mt="lg">{t(kept ? 'keep.otherPlant' : 'keep.onePlant')}</Text>;
  if (!may(person, 'whatIf.write', plant.id)) return null;
  return (
    <form className="no-print" onSubmit={form.onSubmit((values) => save.mutate(values))}>
      <Title order={2} mt="xl" mb="sm">
        {t('keep.title')}
      </Title>
      <Stack maw="36rem">
        <TextInput label={t('keep.name')} required maxLength={120} {...form.getInputProps('name')} />
        <Textarea label={t('keep.note')} autosize minRows={2} maxLength={2000} {...form.getInputProps('note')} />
        {save.isError && <ProblemNote error={save.error} />}
        <Group>
          <Button type="submit" loading={save.isPending}>
            {t('keep.save', { plant: plant.code })}
          </Button>
        </Group>
      </Stack>
    </form>
  );
};
