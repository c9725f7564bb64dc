import { ActionIcon } from '@mantine/core';
import { IconChevronLeft, IconChevronRight } from '@tabler/icons-react';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { addDays } from '#contracts/shared/format.ts';
import { useFormat } from '#web/ui/language.ts';
import type { Period } from '#web/ui/period.ts';
import classes from './review.module.css';
import { reviewRoute } from './routes.ts';

/** One week back or on; the date field goes to any week. */
export const ReviewSteps = ({ period }: { period: Period | undefined }) => {
  const { t } = useTranslation('review');
  const format = useFormat();
  const navigate = useNavigate({ from: reviewRoute.fullPath });
  if (!period) return null;
  const go = (start: string) => void navigate({ search: (now) => ({ ...now, start }), resetScroll: false });
  const started = period.to <= new Date().toISOString().slice(0, 10);

  return (
    <span className={classes.steps}>
      <ActionIcon
        variant="default"
        size="lg"
        className="no-print"
        aria-label={t('back')}
        onClick={() => go(addDays(period.from, -7))}
      >
        <IconChevronLeft size={20} aria-hidden />
      </ActionIcon>
      <strong>{format.period(period.from, period.to)}</strong>
      <ActionIcon
        variant="default"
        size="lg"
        className="no-print"
        aria-label={t('on')}
        disabled={!started}
        onClick={() => go(period.to)}
      >
        <IconChevronRight size={20} aria-hidden />
      </ActionIcon>
    </span>
  );
};
