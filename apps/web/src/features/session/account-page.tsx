import { Divider, Title } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useTranslation } from 'react-i18next';
import { NoticeSettings } from '#web/features/notices/notice-settings.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { usePerson } from '#web/ui/person.ts';
import { PasswordForm } from './password-form.tsx';
import { PreferencesForm } from './preferences-form.tsx';
import { RolesList } from './roles-list.tsx';

export const AccountPage = () => {
  const { t } = useTranslation('session');
  const person = usePerson();
  return (
    <>
      <PageHead title={t('account.title')}>{person.email}</PageHead>
      <Title order={2} mb="sm">
        {t('account.preferences')}
      </Title>
      <PreferencesForm person={person} />
      <Divider my="xl" />
      <Title order={2} mb="sm">
        {t('account.notices')}
      </Title>
      <NoticeSettings />
      <Divider my="xl" />
      <Title order={2} mb="sm">
        {t('account.roles')}
      </Title>
      <RolesList grants={person.grants} />
      <Divider my="xl" />
      <Title order={2} mb="sm">
        {t('account.password')}
      </Title>
      <PasswordForm onChanged={() => void notifications.show({ message: t('newPassword.done') })} />
    </>
  );
};
