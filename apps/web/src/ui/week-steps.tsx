import { ActionIcon } from '@mantine/core';
import { IconChevronLeft, IconChevronRight } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import { addDays } from '#contracts/shared/format.ts';
import { useFormat } from './language.ts';
import type { Period } from './period.ts';
import classes from './week-steps.module.css';

/** The week shown, with one week back or on. */
export const WeekSteps = ({ period, onStart }: { period: Period; onStart: (day: string) => void }) => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  const started = period.to <= new Date().toISOString().slice(0, 10);

  return (
    <span className={classes.steps}>
      <ActionIcon
        variant="default"
        size="lg"
        className="no-print"
        aria-label={t('weekBack')}
        onClick={() => onStart(addDays(period.from, -7))}
      >
        <IconChevronLeft size={20} aria-hidden />
      </ActionIcon>
      <strong>{format.period(period.from, period.to)}</strong>
      <ActionIcon
        variant="default"
        size="lg"
        className="no-print"
        aria-label={t('weekOn')}
        disabled={!started}
        onClick={() => onStart(period.to)}
      >
        <IconChevronRight size={20} aria-hidden />
      </ActionIcon>
    </span>
  );
};
