import { Button, NumberInput, Select, Stack, TagsInput, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Complaint } from '#contracts/complaints.ts';
import { createContainment } from '#contracts/containment.ts';
import type { Input } from '#contracts/shared/endpoint.ts';
import { addDays } from '#contracts/shared/format.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { may, usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { RowsSelect } from '#web/ui/rows-select.tsx';
import { complaintQuery, useWrite } from './queries.ts';
import { newContainmentRoute } from './routes.ts';

/** Says what is suspect; begun from a complaint it takes over what is known there. */
export const NewContainmentPage = () => {
  const { t } = useTranslation('containment');
  const { complaint } = newContainmentRoute.useSearch();
  const query = useQuery(complaintQuery(complaint));
  return (
    <>
      <PageHead title={t('new')}>{t('newLead')}</PageHead>
      {complaint ? (
        <QueryBoundary query={query}>{(known) => <ScopeForm complaint={known} />}</QueryBoundary>
      ) : (
        <ScopeForm />
      )}
    </>
  );
};

const ScopeForm = ({ complaint }: { complaint?: Complaint }) => {
  const { t } = useTranslation('containment');
  const person = usePerson();
  const navigate = useNavigate();
  const { case: caseId } = newContainmentRoute.useSearch();
  const plants = usePlants().filter(({ id }) => may(person, 'containment.write', id));
  const [key] = useState(() => crypto.randomUUID());
  const form = useForm({
    initialValues: {
      plantId: complaint?.plantId ?? '',
      title: complaint?.title ?? '',
      housingIds: complaint?.housingId ? [complaint.housingId] : ([] as string[]),
      terminalIds: complaint?.terminalId ? [complaint.terminalId] : ([] as string[]),
      lineIds: [] as string[],
      toolIds: [] as string[],
      reelLots: complaint?.lots ?? ([] as string[]),
      housingLots: [] as string[],
      builtFrom: complaint?.builtOn ?? '',
      lastDay: complaint?.builtOn ?? '',
      suspectQuantity: '' as number | '',
      suspectBasis: '',
    },
    validate: {
      title: (value) => (value.trim().length < 3 ? t('missing') : null),
      builtFrom: (value) => (value ? null : t('missing')),
      lastDay: (value) => (value ? null : t('missing')),
    },
  });
  const plantId = form.values.plantId || (plants.length === 1 ? plants[0]!.id : '');
  const save = useWrite((body: Input<typeof createContainment.body>) =>
    call(createContainment, { body, idempotencyKey: key }),
  );
  const submit = ({ lastDay, suspectQuantity, suspectBasis, ...values }: typeof form.values) =>
    save.mutate(
      {
        ...values,
        plantId,
        complaintId: complaint?.id ?? null,
        caseId: caseId ?? null,
        builtTo: addDays(lastDay, 1),
        suspectQuantity: suspectQuantity === '' ? null : suspectQuantity,
        suspectBasis: suspectBasis || null,
      },
      {
        onSuccess: ({ id }) => void navigate({ to: '/containment/$id', params: { id } }),
        onError: (error) => form.setErrors(refusedFields(error)),
      },
    );
  return (
    <form onSubmit={form.onSubmit(submit)} noValidate>
      <Stack maw="40rem">
        {complaint?.safety && <Cautions about={['safety']} />}
        {!complaint && plants.length > 1 && (
          <Select
            label={t('plant')}
            required
            data={plants.map(({ id, code }) => ({ value: id, label: code }))}
            {...form.getInputProps('plantId')}
          />
        )}
        <TextInput label={t('titleField')} required maxLength={200} {...form.getInputProps('title')} />
        <RowsSelect
          resource="housings"
          label={t('housings')}
          value={form.values.housingIds}
          onChange={(ids) => form.setFieldValue('housingIds', ids)}
        />
        <RowsSelect
          resource="terminals"
          label={t('terminals')}
          value={form.values.terminalIds}
          onChange={(ids) => form.setFieldValue('terminalIds', ids)}
        />
        <RowsSelect
          resource="lines"
          label={t('lines')}
          {...(plantId && { plant: [plantId] })}
          value={form.values.lineIds}
          onChange={(ids) => form.setFieldValue('lineIds', ids)}
        />
        <RowsSelect
          resource="tools"
          label={t('tools')}
          {...(plantId && { plant: [plantId] })}
          value={form.values.toolIds}
          onChange={(ids) => form.setFieldValue('toolIds', ids)}
        />
        <TagsInput label={t('reelLots')} description={t('tags')} {...form.getInputProps('reelLots')} />
        <TagsInput label={t('housingLots')} description={t('tags')} {...form.getInputProps('housingLots')} />
        <TextInput type="date" label={t('builtFrom')} required {...form.getInputProps('builtFrom')} />
        <TextInput type="date" label={t('lastDay')} required {...form.getInputProps('lastDay')} />
        <NumberInput
          label={t('suspectQuantity')}
          description={t('suspectHelp')}
          min={1}
          allowDecimal={false}
          hideControls
          {...form.getInputProps('suspectQuantity')}
        />
        <TextInput label={t('suspectBasis')} maxLength={1000} {...form.getInputProps('suspectBasis')} />
        {save.error && <ProblemNote error={save.error} />}
        <Button type="submit" loading={save.isPending}>
          {t('new')}
        </Button>
      </Stack>
    </form>
  );
};
