import { Link, useLocation } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import classes from './outbox.module.css';
import { useSending, useWaiting } from './use-outbox.ts';

/** On every page: sends what waits on this device, and says how much that is. */
export const OutboxStrip = () => {
  const { t } = useTranslation('failures');
  const waiting = useWaiting();
  const { pathname } = useLocation();
  useSending(waiting);
  if (waiting.length === 0 || pathname === '/record') return null;
  return (
    <p className={classes.strip} role="status">
      <Link to="/record">{t('outbox.waiting', { count: waiting.length })}</Link>
    </p>
  );
};
