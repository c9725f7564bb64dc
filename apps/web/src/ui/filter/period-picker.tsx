import { Button, Group, Popover, Stack, TextInput } from '@mantine/core';
import { IconCalendarWeek } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { addDays, daysBetween } from '#contracts/shared/format.ts';
import { useFormat } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { dayIn, fullWeeks, type Period } from '#web/ui/period.ts';
import classes from './filter-bar.module.css';
import { useFilter } from './use-filter.ts';

const presets = [1, 4, 13, 26, 52];

/** The calendar of the plants in the filter: their own zone and week where they agree. */
const useCalendar = () => {
  const [{ plant }] = useFilter();
  const plants = usePlants().filter((row) => !plant || plant.includes(row.id));
  const agreed = <Value,>(values: Value[]): Value | undefined => (new Set(values).size === 1 ? values[0] : undefined);
  const zone = agreed(plants.map((row) => row.zone)) ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  return { today: dayIn(zone, new Date()), weekStart: agreed(plants.map((row) => row.weekStart)) ?? 1 };
};

export const PeriodPicker = ({ shown, always }: { shown?: Period; always?: boolean }) => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  const [filter, change] = useFilter();
  const [open, setOpen] = useState(false);
  const { today, weekStart } = useCalendar();
  const period = filter.from && filter.to ? { from: filter.from, to: filter.to } : shown;
  const days = period ? daysBetween(period.from, period.to) : 0;
  const choose = (from: string | undefined, to: string | undefined) => {
    change({ from, to });
    setOpen(false);
  };
  const words = period
    ? `${format.period(period.from, period.to)}${days % 7 === 0 ? ` · ${t('filter.weeks', { count: days / 7 })}` : ''}`
    : filter.from
      ? t('filter.since', { day: format.day(filter.from) })
      : filter.to
        ? t('filter.until', { day: format.day(addDays(filter.to, -1)) })
        : t(always ? 'filter.usualPeriod' : 'filter.anyTime');

  return (
    <Popover opened={open} onChange={setOpen} position="bottom-start" trapFocus withArrow shadow="md">
      <Popover.Target>
        <button type="button" className={classes.word} onClick={() => setOpen(!open)}>
          <IconCalendarWeek size={18} aria-hidden />
          <span className="visually-hidden">{t('filter.period')}: </span>
          {words}
        </button>
      </Popover.Target>
      <Popover.Dropdown>
        <Stack gap="sm" maw="min(22rem, calc(100vw - 3.5rem))">
          <Group gap="xs">
            {presets.map((weeks) => {
              const { from, to } = fullWeeks(today, weeks, weekStart);
              return (
                <Button key={weeks} variant="default" size="compact-md" onClick={() => choose(from, to)}>
                  {t('filter.lastWeeks', { count: weeks })}
                </Button>
              );
            })}
          </Group>
          <PeriodForm period={period} onChoose={choose} />
        </Stack>
      </Popover.Dropdown>
    </Popover>
  );
};

interface FormProps {
  period: Period | undefined;
  onChoose: (from: string | undefined, to: string | undefined) => void;
}

/** People name the last day they mean; the filter keeps the day after it. */
const PeriodForm = ({ period, onChoose }: FormProps) => {
  const { t } = useTranslation('ui');
  const [first, setFirst] = useState(period?.from ?? '');
  const [last, setLast] = useState(period ? addDays(period.to, -1) : '');
  const backwards = first !== '' && last !== '' && last < first;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (!backwards) onChoose(first || undefined, last ? addDays(last, 1) : undefined);
      }}
    >
      <Group gap="xs" align="flex-end" wrap="nowrap">
        <TextInput
          type="date"
          label={t('filter.first')}
          value={first}
          onChange={(event) => setFirst(event.currentTarget.value)}
        />
        <TextInput
          type="date"
          label={t('filter.last')}
          value={last}
          onChange={(event) => setLast(event.currentTarget.value)}
          error={backwards && t('filter.backwards')}
        />
      </Group>
      <Group mt="sm" justify="space-between">
        <Button variant="subtle" size="compact-sm" onClick={() => onChoose(undefined, undefined)}>
          {t('filter.usual')}
        </Button>
        <Button type="submit" size="compact-md">
          {t('filter.apply')}
        </Button>
      </Group>
    </form>
  );
};
