import { Button, MultiSelect, TextInput } from '@mantine/core';
import { useDebouncedCallback } from '@mantine/hooks';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import classes from './audit.module.css';
import type { AuditFilter } from './queries.ts';
import { useWords } from './use-words.ts';
import { entities } from './words.ts';

/** The filter, which lives in the address. */
export const AuditFilterBar = ({ filter }: { filter: AuditFilter }) => {
  const { t } = useTranslation('audit');
  const words = useWords();
  const navigate = useNavigate();
  const change = (patch: AuditFilter) =>
    void navigate({ to: '.', search: ((now: object) => ({ ...now, ...patch })) as never, resetScroll: false });
  const search = useDebouncedCallback((actor: string) => change({ actor: actor.trim() || undefined }), 250);
  const others = (filter.entity ?? []).filter((word) => !entities.some((entity) => entity === word));

  return (
    <section className={classes.filter} aria-label={t('filter')}>
      <PlantPicker />
      <MultiSelect
        className={classes.kinds}
        label={t('what')}
        data={[...entities, ...others].map((value) => ({ value, label: words.entity(value) }))}
        value={filter.entity ?? []}
        onChange={(entity) => change({ entity: entity.length > 0 ? entity : undefined })}
        searchable
      />
      <TextInput
        type="search"
        label={t('who')}
        defaultValue={filter.actor ?? ''}
        onChange={(event) => search(event.currentTarget.value)}
      />
      <TextInput
        type="date"
        label={t('first')}
        value={filter.from ?? ''}
        onChange={(event) => change({ from: event.currentTarget.value || undefined })}
      />
      <TextInput
        type="date"
        label={t('last')}
        value={filter.to ?? ''}
        onChange={(event) => change({ to: event.currentTarget.value || undefined })}
      />
      {filter.entityId && (
        <Button variant="default" onClick={() => change({ entityId: undefined })}>
          {t('everyRow')}
        </Button>
      )}
    </section>
  );
};
