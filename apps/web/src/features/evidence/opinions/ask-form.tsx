import { Button, Group, MultiSelect, NumberInput, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import type { z } from 'zod';
import { askOpinions, OpinionAsk } from '#contracts/evidence.ts';
import { addDays } from '#contracts/shared/format.ts';
import { checkedBy, refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import { dayIn } from '#web/ui/period.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { opinionsKey } from '../queries.ts';

type Ask = z.output<typeof OpinionAsk>;

/** Draws confirmed reports of a time at random and asks for a blind second opinion on each. */
export const AskForm = () => {
  const { t } = useTranslation('evidence');
  const queries = useQueryClient();
  const person = usePerson();
  const plants = usePlants().filter(({ id }) => may(person, 'failures.sort', id));
  const today = dayIn(Intl.DateTimeFormat().resolvedOptions().timeZone, new Date());
  const form = useForm<Ask>({
    initialValues: { plant: [], from: addDays(today, -91), to: today, sample: 20 },
    validate: checkedBy(OpinionAsk),
  });
  const ask = useMutation({
    // people name the last day they mean; a period ends before the day after it
    mutationFn: (draft: Ask) =>
      call(askOpinions, { body: { ...draft, to: addDays(draft.to, 1) }, idempotencyKey: uuidv7() }),
    onSuccess: () => queries.invalidateQueries({ queryKey: opinionsKey }),
    onError: (error) => form.setErrors(refusedFields(error)),
  });
  const asked = ask.data?.asked;
  return (
    <form onSubmit={form.onSubmit((draft) => ask.mutate(draft))}>
      <Stack gap="sm" maw="36rem">
        <MultiSelect
          label={t('opinions.plants')}
          size="md"
          data={plants.map((plant) => ({ value: plant.id, label: rowText(plant) }))}
          {...form.getInputProps('plant')}
        />
        <Group grow>
          <TextInput type="date" size="md" label={t('opinions.first')} {...form.getInputProps('from')} />
          <TextInput type="date" size="md" label={t('opinions.last')} {...form.getInputProps('to')} />
        </Group>
        <NumberInput label={t('opinions.sample')} size="md" min={1} max={200} {...form.getInputProps('sample')} />
        {ask.error && <ProblemNote error={ask.error} />}
        <Group>
          <Button type="submit" size="lg" loading={ask.isPending}>
            {t('opinions.send')}
          </Button>
          <span role="status">
            {asked !== undefined && (asked === 0 ? t('opinions.sentNone') : t('opinions.sent', { count: asked }))}
          </span>
        </Group>
      </Stack>
    </form>
  );
};
