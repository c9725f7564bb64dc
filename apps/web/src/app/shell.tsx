/** The sheet every signed-in page is written on: band above, thumb index at its right edge (below on a phone). */
import { Outlet } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { OutboxStrip } from '#web/features/failures/record/outbox/outbox-strip.tsx';
import { Band } from './band.tsx';
import classes from './shell.module.css';
import { ThumbIndex } from './thumb-index.tsx';

export const Shell = () => {
  const { t } = useTranslation('app');
  return (
    <div className={classes.desk}>
      <a className={classes.skip} href="#content">
        {t('skip')}
      </a>
      <Band />
      <ThumbIndex />
      <main id="content" tabIndex={-1} className={classes.sheet}>
        <OutboxStrip />
        <Outlet />
      </main>
    </div>
  );
};
