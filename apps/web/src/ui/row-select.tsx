import { Select } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type NamedResource, namedQuery, rowText, searchQuery } from './lookup.ts';

interface Props {
  resource: NamedResource;
  label: string;
  /** Only rows of this plant, for what belongs to one. */
  plant?: string | null;
  value: string | null;
  onChange: (id: string | null) => void;
  error?: React.ReactNode;
  required?: boolean;
  size?: 'md' | 'lg';
}

/** One row of a kind of master data, found by typing its code or name. */
export const RowSelect = ({ resource, label, plant, value, onChange, error, required, size }: Props) => {
  const { t } = useTranslation('ui');
  const [typed, setTyped] = useState('');
  const chosen = useQuery({ ...namedQuery(resource, value ?? ''), enabled: value !== null });
  const shown = chosen.data && value !== null ? rowText(chosen.data) : '';
  const [q] = useDebouncedValue(typed === shown ? '' : typed.trim(), 200);
  const found = useQuery({
    ...searchQuery(resource, { ...(q && { q }), ...(plant && { plant: [plant] }) }),
    placeholderData: keepPreviousData,
  });
  const rows = new Map(
    [...(chosen.data && value ? [chosen.data] : []), ...(found.data ?? [])].map((row) => [row.id, row]),
  );

  return (
    <Select
      label={label}
      data={[...rows.values()].map((row) => ({ value: row.id, label: rowText(row) }))}
      value={value}
      onChange={onChange}
      searchable
      clearable={!required}
      required={required}
      searchValue={typed}
      onSearchChange={setTyped}
      filter={({ options }) => options}
      nothingFoundMessage={found.isPending ? t('loading') : t('nothingFound')}
      error={error}
      size={size}
      clearButtonProps={{ 'aria-label': t('clear', { label }) }}
    />
  );
};
