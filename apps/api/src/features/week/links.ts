/** Query strings of the shared filter: what a figure counts is what its link lists. */
import type { Filter } from '#contracts/shared/filter.ts';

export function queryOf(filter: Filter & { due?: boolean }): string {
  const query = new URLSearchParams();
  for (const [field, value] of Object.entries(filter))
    for (const item of Array.isArray(value) ? value : [value])
      if (item !== undefined) query.append(field, String(item));
  return query.toString();
}

export const reportsLink = (filter: Filter) => `/failures?${queryOf(filter)}`;
