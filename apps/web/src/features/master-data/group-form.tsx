import { Button, Stack, Text, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { notifications } from '@mantine/notifications';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { type Organisation, updateOrganisation } from '#contracts/master-data.ts';
import { call, ProblemError } from '#web/ui/http.ts';
import { usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { CurrencyField } from './fields/currency-field.tsx';
import { groupQuery, useForgetMasterData } from './queries.ts';
import { useLabels } from './use-labels.ts';

export const GroupForm = () => {
  const group = useQuery(groupQuery);
  return (
    <QueryBoundary query={group} height={8}>
      {(data) => <Form key={data.version} group={data} />}
    </QueryBoundary>
  );
};

const Form = ({ group }: { group: Organisation }) => {
  const { t } = useTranslation('master-data');
  const label = useLabels();
  const forget = useForgetMasterData();
  const mayChange = usePerson().permissions['groupData.write'] === 'all';
  const form = useForm({
    initialValues: { name: group.name, currency: group.currency },
    validate: { name: (name) => (name.trim() === '' ? t('error.missing') : null) },
  });
  const save = useMutation({
    mutationFn: (body: typeof form.values) => call(updateOrganisation, { body, version: group.version }),
    onSuccess: async () => {
      notifications.show({ withCloseButton: false, message: t('saved') });
      await forget();
    },
  });
  const lost = save.error instanceof ProblemError && save.error.problem.code === 'changed_meanwhile';
  return (
    <form onSubmit={form.onSubmit((values) => save.mutate(values))} noValidate>
      <Stack maw="28rem">
        {!mayChange && <Text size="sm">{t('readOnly')}</Text>}
        {group.demo && <Text size="sm">{t('demo')}</Text>}
        <TextInput
          label={label('name')}
          required
          maxLength={120}
          disabled={!mayChange}
          {...form.getInputProps('name')}
        />
        <CurrencyField
          label={label('groupCurrency')}
          required
          disabled={!mayChange}
          {...form.getInputProps('currency')}
        />
        {save.isError && <ProblemNote error={save.error} />}
        {lost && (
          <Button variant="default" onClick={() => void forget()}>
            {t('loadPresent')}
          </Button>
        )}
        {mayChange && !lost && (
          <Button type="submit" loading={save.isPending}>
            {t('save')}
          </Button>
        )}
      </Stack>
    </form>
  );
};
