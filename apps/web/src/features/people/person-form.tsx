import { Button, Divider, Group, Select, Stack, Text, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { notifications } from '@mantine/notifications';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { createPerson, Email, type Grant, Password, type Person, updatePerson } from '#contracts/people.ts';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { languageNames } from '#web/ui/language-names.ts';
import { GrantsField } from './grants-field.tsx';
import { PasswordField } from './password-field.tsx';
import { PersonActions } from './person-actions.tsx';
import { useForgetPeople } from './queries.ts';
import { SaveProblem } from './save-problem.tsx';

interface Props {
  person: Person | undefined;
  onDone: () => void;
}

export const PersonForm = ({ person, onDone }: Props) => {
  const { t } = useTranslation('people');
  const forget = useForgetPeople();
  const form = useForm({
    initialValues: {
      name: person?.name ?? '',
      email: person?.email ?? '',
      locale: person?.locale ?? ('en' as const),
      grants: (person?.grants ?? [{ role: 'viewer', plantId: null }]) as Grant[],
      password: '',
    },
    validate: {
      name: (name) => (name.trim() === '' ? t('error.missing') : null),
      email: (email) => (Email.safeParse(email).success ? null : t('error.email')),
      password: (password) => (person || Password.safeParse(password).success ? null : t('error.password')),
    },
  });
  const save = useMutation({
    mutationFn: ({ password, ...body }: typeof form.values) =>
      person
        ? call(updatePerson, { params: { id: person.id }, body, version: person.version })
        : call(createPerson, { body: { ...body, password } }),
    onSuccess: async () => {
      notifications.show({ withCloseButton: false, message: t('saved') });
      onDone();
      await forget();
    },
    onError: (error) => form.setErrors(refusedFields(error)),
  });

  return (
    <Stack>
      <form onSubmit={form.onSubmit((values) => save.mutate(values))} noValidate>
        <Stack>
          {person?.retiredAt && <Text fw={600}>{t('isRetired')}</Text>}
          <TextInput label={t('name')} required maxLength={120} autoComplete="off" {...form.getInputProps('name')} />
          <TextInput label={t('email')} type="email" required autoComplete="off" {...form.getInputProps('email')} />
          <Select
            label={t('language')}
            data={Object.entries(languageNames).map(([value, label]) => ({ value, label }))}
            allowDeselect={false}
            {...form.getInputProps('locale')}
          />
          <GrantsField grants={form.values.grants} onChange={(grants) => form.setFieldValue('grants', grants)} />
          {!person && <PasswordField {...form.getInputProps('password')} />}
          <SaveProblem error={save.error} onReload={() => void forget()} />
          <Group justify="flex-end">
            <Button type="submit" loading={save.isPending}>
              {t('save')}
            </Button>
          </Group>
        </Stack>
      </form>
      {person && (
        <>
          <Divider />
          <PersonActions person={person} onDone={onDone} />
        </>
      )}
    </Stack>
  );
};
