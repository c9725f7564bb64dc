import { Button, PasswordInput, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { changePassword, Password } from '#contracts/people.ts';
import { call } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';

export const PasswordForm = ({ onChanged }: { onChanged: () => void | Promise<void> }) => {
  const { t } = useTranslation('session');
  const form = useForm({
    initialValues: { current: '', next: '', again: '' },
    validate: {
      next: (value) => (Password.safeParse(value).success ? null : t('newPassword.short')),
      again: (value, { next }) => (value === next ? null : t('newPassword.differs')),
    },
  });
  const change = useMutation({
    mutationFn: ({ current, next }: typeof form.values) => call(changePassword, { body: { current, next } }),
    onSuccess: () => {
      form.reset();
      return onChanged();
    },
  });
  const eye = { 'aria-label': t('showPassword') };

  return (
    <form onSubmit={form.onSubmit((values) => change.mutate(values))}>
      <Stack maw="26rem">
        {change.isError && <ProblemNote error={change.error} />}
        <PasswordInput
          label={t('newPassword.current')}
          autoComplete="current-password"
          required
          visibilityToggleButtonProps={eye}
          {...form.getInputProps('current')}
        />
        <PasswordInput
          label={t('newPassword.next')}
          description={t('newPassword.help')}
          autoComplete="new-password"
          required
          visibilityToggleButtonProps={eye}
          {...form.getInputProps('next')}
        />
        <PasswordInput
          label={t('newPassword.again')}
          autoComplete="new-password"
          required
          visibilityToggleButtonProps={eye}
          {...form.getInputProps('again')}
        />
        <Button type="submit" loading={change.isPending}>
          {t('newPassword.submit')}
        </Button>
      </Stack>
    </form>
  );
};
