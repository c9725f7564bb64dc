import { MultiSelect } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { keepPreviousData, useQueries, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type Named, type NamedResource, namedQuery, rowText, searchQuery } from './lookup.ts';

interface Props {
  resource: NamedResource;
  label: string;
  plant?: readonly string[];
  value: string[];
  onChange: (ids: string[]) => void;
}

/** Several rows of a kind of master data, found by typing. */
export const RowsSelect = ({ resource, label, plant, value, onChange }: Props) => {
  const { t } = useTranslation('ui');
  const [typed, setTyped] = useState('');
  const [q] = useDebouncedValue(typed.trim(), 200);
  const found = useQuery({
    ...searchQuery(resource, { ...(q && { q }), ...(plant && { plant }) }),
    placeholderData: keepPreviousData,
  });
  const chosen = useQueries({ queries: value.map((id) => namedQuery(resource, id)) });
  const rows = new Map<string, Named>();
  for (const row of [...chosen.flatMap(({ data }) => data ?? []), ...(found.data ?? [])]) rows.set(row.id, row);

  return (
    <MultiSelect
      label={label}
      data={[...rows.values()].map((row) => ({ value: row.id, label: rowText(row) }))}
      value={value}
      onChange={onChange}
      searchable
      searchValue={typed}
      onSearchChange={setTyped}
      filter={({ options }) => options}
      description={found.isPending ? t('loading') : rows.size === 0 ? t('nothingFound') : undefined}
      comboboxProps={{ withinPortal: false }}
    />
  );
};
