import { Button, Group, Stack, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { notifications } from '@mantine/notifications';
import { useMutation } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { Password, type Person, resetPassword, retirePerson } from '#contracts/people.ts';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { call } from '#web/ui/http.ts';
import { usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { PasswordField } from './password-field.tsx';
import { useForgetPeople } from './queries.ts';
import { SaveProblem } from './save-problem.tsx';

/** What an administrator may do to somebody else's account: a new first password, retire, bring back. */
export const PersonActions = ({ person, onDone }: { person: Person; onDone: () => void }) => {
  const { t } = useTranslation('people');
  const forget = useForgetPeople();
  const own = usePerson().id === person.id;
  const form = useForm({
    initialValues: { password: '' },
    validate: { password: (password) => (Password.safeParse(password).success ? null : t('error.password')) },
  });
  const target = { params: { id: person.id }, version: person.version };
  const finish = (message: string) => async () => {
    notifications.show({ withCloseButton: false, message });
    onDone();
    await forget();
  };
  const reset = useMutation({
    mutationFn: (body: { password: string }) => call(resetPassword, { ...target, body }),
    onSuccess: finish(t('passwordReset')),
  });
  const retire = useMutation({
    mutationFn: (retired: boolean) => call(retirePerson, { ...target, body: { retired } }),
    onSuccess: finish(t('saved')),
  });
  if (own) return <Text size="sm">{t('ownAccount')}</Text>;

  return (
    <Stack>
      {!person.retiredAt && (
        <form onSubmit={form.onSubmit((values) => reset.mutate(values))} noValidate>
          <Stack>
            <PasswordField {...form.getInputProps('password')} />
            <SaveProblem error={reset.error} onReload={() => void forget()} />
            <Group>
              <Button type="submit" variant="default" loading={reset.isPending}>
                {t('resetPassword')}
              </Button>
            </Group>
          </Stack>
        </form>
      )}
      <Group>
        {person.retiredAt ? (
          <>
            {retire.isError && <ProblemNote error={retire.error} />}
            <Button variant="default" loading={retire.isPending} onClick={() => retire.mutate(false)}>
              {t('bringBack')}
            </Button>
          </>
        ) : (
          <ConfirmButton
            question={t('retireQuestion', { name: person.name })}
            confirm={t('retire')}
            onConfirm={() => retire.mutateAsync(true)}
            pending={retire.isPending}
            error={retire.error}
          >
            {t('retire')}
          </ConfirmButton>
        )}
      </Group>
    </Stack>
  );
};
