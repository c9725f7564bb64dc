import { Button, Select, Textarea, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useRef } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { type ActionKind, actionKinds } from '#contracts/actions.ts';
import { decide, type Review } from '#contracts/review.ts';
import { addDays } from '#contracts/shared/format.ts';
import { colleaguesQuery } from '#web/features/actions/queries.ts';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { dayIn } from '#web/ui/period.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetReviews } from './queries.ts';
import classes from './review.module.css';
import { useReviewWords } from './use-words.ts';

/** Writes down a decision; it becomes an action of the plant with an owner and a day. */
export const DecisionForm = ({ review }: { review: Review }) => {
  const { t } = useTranslation('review');
  const words = useReviewWords();
  const forget = useForgetReviews();
  const { places } = review.content;
  const first = useRef<HTMLInputElement>(null);
  const blank = {
    plantId: places.length === 1 ? places[0]!.id : '',
    kind: 'corrective' as ActionKind,
    title: '',
    description: '',
    ownerId: '',
    dueOn: addDays(dayIn(places[0]?.zone ?? 'UTC', new Date()), 7),
  };
  const form = useForm({ initialValues: blank });
  const { plantId } = form.values;
  const owners = useQuery({ ...colleaguesQuery(plantId), enabled: plantId !== '' });
  const save = useMutation({
    mutationFn: (values: typeof blank) =>
      call(decide, {
        params: { id: review.id ?? '' },
        body: { ...values, description: values.description.trim() || null },
        idempotencyKey: uuidv7(),
      }),
    onSuccess: async () => {
      form.setValues({ ...blank, plantId });
      first.current?.focus();
      await forget();
    },
    onError: (error) => form.setErrors(refusedFields(error)),
  });

  return (
    <form className={`${classes.decision} no-print`} onSubmit={form.onSubmit((values) => save.mutate(values))}>
      <h3>{t('decision.new')}</h3>
      <TextInput ref={first} label={t('decision.title')} required maxLength={120} {...form.getInputProps('title')} />
      <div className={classes.fields}>
        {places.length > 1 && (
          <Select
            label={t('decision.plant')}
            data={places.map(({ id, code, name }) => ({ value: id, label: `${name} (${code})` }))}
            required
            allowDeselect={false}
            {...form.getInputProps('plantId')}
            onChange={(id) => form.setValues({ plantId: id ?? '', ownerId: '' })}
          />
        )}
        <Select
          label={words.column.kind}
          data={actionKinds.map((kind) => ({ value: kind, label: words.kind[kind] }))}
          required
          allowDeselect={false}
          {...form.getInputProps('kind')}
        />
        <Select
          label={words.column.owner}
          data={(owners.data ?? []).map(({ id, name }) => ({ value: id, label: name }))}
          searchable
          required
          disabled={plantId === ''}
          {...form.getInputProps('ownerId')}
        />
        <TextInput type="date" label={words.column.due} required {...form.getInputProps('dueOn')} />
      </div>
      <Textarea label={t('decision.note')} autosize minRows={1} {...form.getInputProps('description')} />
      {save.error && <ProblemNote error={save.error} />}
      <Button type="submit" loading={save.isPending} mt="sm">
        {t('decision.save')}
      </Button>
    </form>
  );
};
