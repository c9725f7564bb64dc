import { useQueries } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { namedQuery } from '#web/ui/lookup.ts';
import { type FieldName, fields } from './fields.ts';
import { useFilter } from './use-filter.ts';

/** The value of one filter part in words; names of rows are looked up. */
export const useValueText = (name: FieldName): string => {
  const { t } = useTranslation('ui');
  const terms = useTerms();
  const format = useFormat();
  const [filter] = useFilter();
  const field = fields[name];
  const value = filter[name];
  const values = Array.isArray(value) ? value.map(String) : [];
  const ids = field.kind === 'rows' ? values.filter((id) => id !== 'none') : [];
  const rows = useQueries({
    queries: ids.map((id) => (field.kind === 'rows' ? namedQuery(field.resource, id) : namedQuery('plants', id))),
  });
  const codes = new Map(rows.flatMap(({ data }) => (data ? [[data.id, data.code]] : [])));
  const word = (item: string): string => {
    if (item === 'none') return t('filter.none');
    if (field.kind === 'words') return (terms[field.labels] as Record<string, string>)[item] ?? item;
    return field.kind === 'rows' ? (codes.get(item) ?? '…') : item;
  };

  if (Array.isArray(value)) return format.list(values.map(word));
  if (typeof value === 'boolean') return t(value ? 'filter.yes' : 'filter.no');
  if (name === 'gates') return t('filter.atLeastGates', { count: Number(value) });
  if (name === 'cost') return t(`filter.costs.${value as 'booked'}`);
  if (name === 'import') return t('filter.oneImport');
  return String(value);
};
