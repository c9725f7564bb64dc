import { useQueries } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { type NamedResource, namedQuery } from '#web/ui/lookup.ts';
import { type FieldName, fieldNames, fields } from './fields.ts';
import { type FilterValues, useFilter } from './use-filter.ts';

const rowsIn = (filter: FilterValues): { resource: NamedResource; id: string }[] =>
  fieldNames.flatMap((name) => {
    const field = fields[name];
    if (field.kind !== 'rows') return [];
    const chosen = [filter[name] ?? []].flat().map(String);
    const excepted = (filter.except ?? []).flatMap((text) =>
      text.startsWith(`${name}:`) ? text.slice(name.length + 1) : [],
    );
    return [...chosen, ...excepted].filter((id) => id !== 'none').map((id) => ({ resource: field.resource, id }));
  });

/** Writes the parts of the page's filter in words; names of rows are looked up. */
export const useValueText = (): ((name: FieldName) => string) => {
  const { t } = useTranslation('ui');
  const terms = useTerms();
  const format = useFormat();
  const [filter] = useFilter();
  const asked = rowsIn(filter);
  const rows = useQueries({ queries: asked.map(({ resource, id }) => namedQuery(resource, id)) });
  const codes = new Map(
    asked.map(({ id }, place) => [id, rows[place]?.data?.code ?? (rows[place]?.isError ? '?' : '…')]),
  );

  const word = (name: FieldName, item: string): string => {
    const field = fields[name];
    if (item === 'none') return t('filter.none');
    if (field.kind === 'words') return (terms[field.labels] as Record<string, string>)[item] ?? item;
    return field.kind === 'rows' ? (codes.get(item) ?? item) : item;
  };

  const exceptions = (texts: readonly string[]): string[] =>
    texts.map((text) => {
      const [dimension = '', key = ''] = text.split(/:(.*)/s);
      return dimension in fields ? word(dimension as FieldName, key) : key;
    });

  return (name) => {
    const value = filter[name];
    if (name === 'except') return format.list(exceptions(filter.except ?? []));
    if (Array.isArray(value)) return format.list(value.map((item) => word(name, String(item))));
    if (typeof value === 'boolean') return t(value ? 'filter.yes' : 'filter.no');
    if (name === 'gates') return t('filter.atLeastGates', { count: Number(value) });
    if (name === 'cost') return t(`filter.costs.${value as 'booked'}`);
    if (name === 'import') return t('filter.oneImport');
    return String(value);
  };
};
