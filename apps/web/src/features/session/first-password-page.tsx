import { Text } from '@mantine/core';
import { useQueryClient } from '@tanstack/react-query';
import { useRouter } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { meQuery } from '#web/ui/person.ts';
import { Door } from './door.tsx';
import { PasswordForm } from './password-form.tsx';
import { firstPasswordRoute } from './routes.ts';

export const FirstPasswordPage = () => {
  const { t } = useTranslation('session');
  const { next } = firstPasswordRoute.useSearch();
  const queries = useQueryClient();
  const router = useRouter();
  const onChanged = async () => {
    await queries.fetchQuery({ ...meQuery, staleTime: 0 });
    router.history.push(next ?? '/');
  };
  return (
    <Door title={t('firstPassword.title')}>
      <Text size="sm" mb="md">
        {t('firstPassword.text')}
      </Text>
      <PasswordForm onChanged={onChanged} />
    </Door>
  );
};
