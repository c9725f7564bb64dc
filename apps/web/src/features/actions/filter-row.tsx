import { Group, MultiSelect, SegmentedControl, Switch, TextInput } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { type ActionKind, type ActionState, actionKinds, actionStates } from '#contracts/actions.ts';
import { usePlants } from '#web/ui/lookup.ts';
import type { Filter } from './queries.ts';
import { useActionTerms } from './use-terms.ts';

interface Props {
  filter: Filter;
  onChange: (filter: Filter) => void;
}

/** Whose, where, which; every choice is part of the page's address. */
export const FilterRow = ({ filter, onChange }: Props) => {
  const { t } = useTranslation('actions');
  const terms = useActionTerms();
  const plants = usePlants();
  const change = (part: Filter) => onChange({ ...filter, ...part });
  const flag = (name: 'overdue' | 'toVerify') => (
    <Switch
      label={t(`filter.${name}`)}
      checked={filter[name] === true}
      onChange={(event) => change({ [name]: event.currentTarget.checked ? true : undefined })}
    />
  );
  const labelled = <Word extends string>(words: readonly Word[], labels: Readonly<Record<Word, string>>) =>
    words.map((word) => ({ value: word, label: labels[word] }));
  const list = <Item,>(items: Item[]): Item[] | undefined => (items.length ? items : undefined);

  return (
    <Group mb="md" align="flex-end" className="no-print" role="search" aria-label={t('filter.title')}>
      <SegmentedControl
        aria-label={t('filter.whose')}
        value={filter.owner?.includes('me') ? 'me' : 'all'}
        onChange={(whose) => change({ owner: whose === 'me' ? ['me'] : undefined })}
        data={[
          { value: 'me', label: t('filter.mine') },
          { value: 'all', label: t('filter.plants') },
        ]}
      />
      <SegmentedControl
        aria-label={t('filter.openness')}
        value={filter.open === undefined ? 'all' : String(filter.open)}
        onChange={(open) => change({ open: open === 'all' ? undefined : open === 'true' })}
        data={[
          { value: 'true', label: t('filter.open') },
          { value: 'false', label: t('filter.closed') },
          { value: 'all', label: t('filter.all') },
        ]}
      />
      {plants.length > 1 && (
        <MultiSelect
          label={terms.field.plant}
          data={plants.map(({ id, code }) => ({ value: id, label: code }))}
          value={filter.plant ?? []}
          onChange={(plant) => change({ plant: list(plant) })}
          w="12rem"
        />
      )}
      <MultiSelect
        label={terms.field.kind}
        data={labelled(actionKinds, terms.kind)}
        value={filter.kind ?? []}
        onChange={(kind) => change({ kind: list(kind as ActionKind[]) })}
        w="12rem"
      />
      <MultiSelect
        label={terms.field.state}
        data={labelled(actionStates, terms.state)}
        value={filter.state ?? []}
        onChange={(state) => change({ state: list(state as ActionState[]) })}
        w="14rem"
      />
      <TextInput
        label={t('filter.search')}
        defaultValue={filter.q ?? ''}
        key={filter.q ?? ''}
        maxLength={200}
        onBlur={(event) => change({ q: event.currentTarget.value.trim() || undefined })}
        onKeyDown={(event) => {
          if (event.key === 'Enter') change({ q: event.currentTarget.value.trim() || undefined });
        }}
      />
      {flag('overdue')}
      {flag('toVerify')}
    </Group>
  );
};
