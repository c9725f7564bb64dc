import { Button, Select, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { notifications } from '@mantine/notifications';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { changePreferences, type Me } from '#contracts/people.ts';
import { locales } from '#contracts/shared/scalars.ts';
import { i18n, setLanguage } from '#web/app/i18n.ts';
import { call } from '#web/ui/http.ts';
import { languageNames } from '#web/ui/language-names.ts';
import { meQuery } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';

export const PreferencesForm = ({ person }: { person: Me }) => {
  const { t } = useTranslation('session');
  const queries = useQueryClient();
  const form = useForm({ initialValues: { name: person.name, locale: person.locale } });
  const save = useMutation({
    mutationFn: (body: typeof form.values) => call(changePreferences, { body }),
    onSuccess: async (changed) => {
      queries.setQueryData(meQuery.queryKey, changed);
      await setLanguage(changed.locale);
      notifications.show({ message: i18n.t('account.saved', { ns: 'session' }) });
    },
  });

  return (
    <form onSubmit={form.onSubmit((values) => save.mutate(values))}>
      <Stack maw="26rem">
        {save.isError && <ProblemNote error={save.error} />}
        <TextInput
          label={t('account.name')}
          autoComplete="name"
          required
          maxLength={120}
          {...form.getInputProps('name')}
        />
        <Select
          label={t('language')}
          allowDeselect={false}
          data={locales.map((locale) => ({ value: locale, label: languageNames[locale] }))}
          {...form.getInputProps('locale')}
        />
        <Button type="submit" loading={save.isPending}>
          {t('account.save')}
        </Button>
      </Stack>
    </form>
  );
};
