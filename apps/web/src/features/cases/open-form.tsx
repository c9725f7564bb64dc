import { Button, Drawer, Group, Select, Stack, Switch, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useEffect } from 'react';
import { useTranslation } from 'react-i18next';
import { readComplaint } from '#contracts/complaints.ts';
import { call } from '#web/ui/http.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { RowSelect } from '#web/ui/row-select.tsx';
import { useOpenCase } from './queries.ts';

/** Opens a case, directly or for a complaint, whose customer, part and reports it then takes over. */
export const OpenForm = ({ complaintId, onDone }: { complaintId: string | null; onDone: () => void }) => {
  const { t } = useTranslation('cases');
  const navigate = useNavigate();
  const person = usePerson();
  const plants = usePlants().filter(({ id }) => may(person, 'cases.write', id));
  const open = useOpenCase();
  const complaint = useQuery({
    queryKey: ['complaints', 'one', complaintId],
    queryFn: ({ signal }) => call(readComplaint, { params: { id: complaintId ?? '' }, signal }),
    enabled: complaintId !== null,
  }).data;
  const form = useForm({
    initialValues: {
      plantId: plants.length === 1 ? (plants[0]?.id ?? null) : (null as string | null),
      title: '',
      safety: false,
      customerId: null as string | null,
      housingId: null as string | null,
      terminalId: null as string | null,
    },
  });
  const { setValues } = form;
  useEffect(() => {
    if (!complaint) return;
    const { plantId, title, safety, customerId, housingId, terminalId } = complaint;
    setValues({ plantId, title, safety, customerId, housingId, terminalId });
  }, [complaint, setValues]);
  const submit = form.onSubmit(({ plantId, ...values }) =>
    open.mutate(
      {
        ...{ plantId: plantId ?? '', ...values },
        complaintIds: complaint ? [complaint.id] : [],
        reportIds: complaint?.reports.filter(({ voided }) => !voided).map(({ id }) => id) ?? [],
      },
      { onSuccess: ({ id }) => void navigate({ to: '/cases/$id', params: { id } }) },
    ),
  );
  return (
    <Drawer opened onClose={onDone} position="right" title={t('new')} closeButtonProps={{ 'aria-label': t('cancel') }}>
      <form onSubmit={submit}>
        <Stack>
          <Select
            label={t('plant')}
            required
            data={plants.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` }))}
            allowDeselect={false}
            {...form.getInputProps('plantId')}
          />
          <TextInput
            label={t('caseTitle')}
            description={t('titleHelp')}
            required
            minLength={3}
            {...form.getInputProps('title')}
          />
          <RowSelect resource="customers" label={t('customer')} {...bound(form, 'customerId')} />
          <RowSelect resource="housings" label={t('housing')} {...bound(form, 'housingId')} />
          <RowSelect resource="terminals" label={t('terminal')} {...bound(form, 'terminalId')} />
          <Switch
            label={t('safety')}
            description={t('safetyHelp')}
            {...form.getInputProps('safety', { type: 'checkbox' })}
          />
          {open.error && <ProblemNote error={open.error} />}
          <Group>
            <Button type="submit" loading={open.isPending} disabled={form.values.plantId === null}>
              {t('open')}
            </Button>
            <Button variant="default" onClick={onDone}>
              {t('cancel')}
            </Button>
          </Group>
        </Stack>
      </form>
    </Drawer>
  );
};

const bound = (form: { getInputProps: (name: string) => unknown }, name: string) =>
  form.getInputProps(name) as { value: string | null; onChange: (id: string | null) => void };
