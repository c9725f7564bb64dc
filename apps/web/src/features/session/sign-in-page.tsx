import { Button, PasswordInput, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRouter } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { signIn } from '#contracts/people.ts';
import { setLanguage } from '#web/app/i18n.ts';
import { call } from '#web/ui/http.ts';
import { meQuery } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { Door } from './door.tsx';
import { signInRoute } from './routes.ts';

export const SignInPage = () => {
  const { t } = useTranslation('session');
  const { next } = signInRoute.useSearch();
  const queries = useQueryClient();
  const router = useRouter();
  const form = useForm({ initialValues: { email: '', password: '' } });
  const enter = useMutation({
    mutationFn: (body: { email: string; password: string }) => call(signIn, { body }),
    onSuccess: async (person) => {
      queries.clear();
      queries.setQueryData(meQuery.queryKey, person);
      await setLanguage(person.locale);
      router.history.push(next ?? '/');
    },
  });

  return (
    <Door title={t('signIn.title')}>
      <form onSubmit={form.onSubmit((values) => enter.mutate(values))}>
        <Stack>
          {enter.isError && <ProblemNote error={enter.error} />}
          <TextInput
            label={t('email')}
            type="email"
            autoComplete="username"
            autoFocus
            required
            {...form.getInputProps('email')}
          />
          <PasswordInput
            label={t('password')}
            autoComplete="current-password"
            required
            visibilityToggleButtonProps={{ 'aria-label': t('showPassword') }}
            {...form.getInputProps('password')}
          />
          <Button type="submit" size="md" loading={enter.isPending}>
            {t('signIn.submit')}
          </Button>
        </Stack>
      </form>
    </Door>
  );
};
