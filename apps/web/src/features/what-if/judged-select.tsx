import { Select } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import type { JudgedEffect } from '#contracts/effects.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import { useFilter } from '#web/ui/filter/use-filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { judgedQuery } from './queries.ts';

interface Props {
  cause: Cause | null;
  actionId: string | null;
  onTake: (effect: JudgedEffect | null) => void;
}

/** Ranges that the data of these plants have shown; nothing where no action against the cause has held yet. */
export const JudgedSelect = ({ cause, actionId, onTake }: Props) => {
  const { t } = useTranslation('what-if');
  const format = useFormat();
  const [{ plant }] = useFilter();
  const { data: items = [] } = useQuery(judgedQuery(plant));
  const held = items.filter((effect) => effect.verdict === 'held' && effect.cause === cause);
  if (held.length === 0) return null;
  const share = (value: number) => format.percent(value, 0);
  return (
    <Select
      label={t('effect.take')}
      placeholder={t('effect.entered')}
      clearable
      mt="xs"
      maw="36rem"
      value={actionId}
      data={held.map(({ actionId: id, number, title, reduction: { low, high }, fewerThanPlanned }) => ({
        value: id,
        label: t(fewerThanPlanned ? 'effect.shownThin' : 'effect.shown', {
          action: `${number} ${title}`,
          low: share(low),
          high: share(high),
        }),
      }))}
      onChange={(id) => onTake(held.find((effect) => effect.actionId === id) ?? null)}
    />
  );
};
