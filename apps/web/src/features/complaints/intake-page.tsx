import { Anchor, Button, Checkbox, NumberInput, Select, Stack, TagsInput, Textarea, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { createComplaint, type NewComplaint } from '#contracts/complaints.ts';
import { effects } from '#contracts/taxonomy.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { useTerms } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { may, usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { RowSelect } from '#web/ui/row-select.tsx';
import { ownersQuery, useWrite } from './queries.ts';
import { SimilarList } from './similar-list.tsx';
import { soughtBy } from './sought.ts';

/** The browser's own clock as a value of a date and time field. */
const nowLocal = (): string => {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
};

/** Takes a complaint in; possible duplicates and similar cases are offered while typing. */
export const IntakePage = () => {
  const { t } = useTranslation('complaints');
  const { effect } = useTerms();
  const person = usePerson();
  const navigate = useNavigate();
  const plants = usePlants().filter(({ id }) => may(person, 'complaints.write', id));
  const [key] = useState(() => crypto.randomUUID());
  const form = useForm({
    initialValues: {
      plantId: '',
      customerId: null as string | null,
      customerRef: '',
      customerPart: '',
      title: '',
      housingId: null as string | null,
      terminalId: null as string | null,
      quantity: '' as number | '',
      lots: [] as string[],
      serials: [] as string[],
      receivedAt: nowLocal(),
      builtOn: '',
      foundOn: '',
      effect: null as NewComplaint['effect'],
      safety: false,
      mailText: '',
      ownerId: null as string | null,
    },
    validate: {
      plantId: (value) => (value || plants.length === 1 ? null : t('form.missing')),
      customerId: (value) => (value ? null : t('form.missing')),
      title: (value) => (value.trim().length < 3 ? t('form.missing') : null),
      receivedAt: (value) => (value ? null : t('form.missing')),
    },
  });
  const { values } = form;
  const plantId = values.plantId || (plants.length === 1 ? plants[0]!.id : '');
  const owners = useQuery(ownersQuery(plantId)).data ?? [];
  const [sought] = useDebouncedValue(soughtBy({ ...values, plantId }), 400);
  const save = useWrite((body: NewComplaint) => call(createComplaint, { body, idempotencyKey: key }));
  const submit = () =>
    save.mutate(
      {
        ...values,
        plantId,
        customerId: values.customerId ?? '',
        customerRef: values.customerRef || null,
        customerPart: values.customerPart || null,
        quantity: values.quantity === '' ? null : values.quantity,
        receivedAt: new Date(values.receivedAt).toISOString(),
        builtOn: values.builtOn || null,
        foundOn: values.foundOn || null,
        mailText: values.mailText || null,
      },
      {
        onSuccess: ({ id }) => void navigate({ to: '/complaints/$id', params: { id } }),
        onError: (error) => form.setErrors(refusedFields(error)),
      },
    );
  return (
    <>
      <PageHead title={t('intake.title')}>{t('intake.lead')}</PageHead>
      <form onSubmit={form.onSubmit(submit)} noValidate>
        <Stack maw="40rem">
          {plants.length > 1 && (
            <Select
              label={t('field.plant')}
              required
              data={plants.map(({ id, code }) => ({ value: id, label: code }))}
              {...form.getInputProps('plantId')}
            />
          )}
          <RowSelect
            resource="customers"
            label={t('field.customer')}
            required
            value={values.customerId}
            onChange={(id) => form.setFieldValue('customerId', id)}
            error={form.errors.customerId}
          />
          <TextInput label={t('field.customerRef')} maxLength={80} {...form.getInputProps('customerRef')} />
          <TextInput label={t('field.title')} required maxLength={200} {...form.getInputProps('title')} />
          <Select
            label={t('field.effect')}
            clearable
            data={effects.map((value) => ({ value, label: effect[value] }))}
            {...form.getInputProps('effect')}
          />
          <Checkbox
            size="lg"
            label={t('field.safety')}
            description={t('safety.help')}
            {...form.getInputProps('safety', { type: 'checkbox' })}
          />
          {values.safety && <Cautions about={['safety']} />}
          <TextInput label={t('field.customerPart')} maxLength={80} {...form.getInputProps('customerPart')} />
          <RowSelect
            resource="housings"
            label={t('field.housing')}
            value={values.housingId}
            onChange={(id) => form.setFieldValue('housingId', id)}
            error={form.errors.housingId}
          />
          <RowSelect
            resource="terminals"
            label={t('field.terminal')}
            value={values.terminalId}
            onChange={(id) => form.setFieldValue('terminalId', id)}
            error={form.errors.terminalId}
          />
          <NumberInput
            label={t('field.quantity')}
            min={1}
            allowDecimal={false}
            hideControls
            {...form.getInputProps('quantity')}
          />
          <TagsInput label={t('field.lots')} description={t('form.tags')} {...form.getInputProps('lots')} />
          <TagsInput label={t('field.serials')} description={t('form.tags')} {...form.getInputProps('serials')} />
          <TextInput
            type="datetime-local"
            label={t('field.receivedAt')}
            description={t('form.browserTime')}
            required
            {...form.getInputProps('receivedAt')}
          />
          <TextInput type="date" label={t('field.builtOn')} {...form.getInputProps('builtOn')} />
          <TextInput type="date" label={t('field.foundOn')} {...form.getInputProps('foundOn')} />
          <Select
            label={t('field.owner')}
            description={t('form.ownerHelp')}
            clearable
            searchable
            data={owners.map(({ id, name }) => ({ value: id, label: name }))}
            {...form.getInputProps('ownerId')}
          />
          <Textarea
            label={t('field.mailText')}
            autosize
            minRows={4}
            maxRows={16}
            maxLength={50_000}
            {...form.getInputProps('mailText')}
          />
        </Stack>
        <SimilarList sought={sought} />
        {save.error && <ProblemNote error={save.error} />}
        <Button type="submit" size="lg" loading={save.isPending}>
          {t('intake.save')}
        </Button>{' '}
        <Anchor ml="md" renderRoot={(props) => <Link {...props} to="/complaints" />}>
          {t('back')}
        </Anchor>
      </form>
    </>
  );
};
