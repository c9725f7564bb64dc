import { Menu } from '@mantine/core';
import { IconChevronDown, IconLogout, IconPrinter, IconUser } from '@tabler/icons-react';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { signOut } from '#contracts/people.ts';
import { Bell } from '#web/features/notices/bell.tsx';
import { call } from '#web/ui/http.ts';
import { usePerson } from '#web/ui/person.ts';
import icon from './icon.svg';
import classes from './shell.module.css';

export const Band = () => {
  const { t } = useTranslation('app');
  const person = usePerson();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const leave = useMutation({
    mutationFn: () => call(signOut, {}),
    onSettled: async () => {
      await navigate({ to: '/sign-in' });
      queries.clear();
    },
  });

  return (
    <header className={classes.band}>
      <Link to="/" className={classes.wordmark}>
        <img src={icon} alt="" width={26} height={26} />
        <span>Escape Ledger</span>
      </Link>
      <Bell />
      <Menu position="bottom-end" width={220}>
        <Menu.Target>
          <button type="button" className={classes.person} aria-label={t('account', { name: person.name })}>
            <span>{person.name}</span>
            <IconChevronDown size={16} aria-hidden />
          </button>
        </Menu.Target>
        <Menu.Dropdown>
          <Menu.Item component={Link} to="/account" leftSection={<IconUser size={18} aria-hidden />}>
            {t('ownAccount')}
          </Menu.Item>
          <Menu.Item leftSection={<IconPrinter size={18} aria-hidden />} onClick={() => window.print()}>
            {t('print')}
          </Menu.Item>
          <Menu.Item leftSection={<IconLogout size={18} aria-hidden />} onClick={() => leave.mutate()}>
            {t('signOut')}
          </Menu.Item>
        </Menu.Dropdown>
      </Menu>
    </header>
  );
};
