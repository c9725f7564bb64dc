import { IconBell } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import classes from './notices.module.css';
import { unreadQuery } from './queries.ts';

/** How many notices are unread, and the way to them. */
export const Bell = () => {
  const { t } = useTranslation('notices');
  const unread = useQuery(unreadQuery).data?.unread ?? 0;
  return (
    <Link to="/notices" className={classes.bell} aria-label={t('bell', { count: unread })}>
      <IconBell size={22} aria-hidden />
      {unread > 0 && (
        <span className={classes.count} aria-hidden>
          {unread > 99 ? '99+' : unread}
        </span>
      )}
    </Link>
  );
};
