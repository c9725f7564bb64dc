import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { week } from '#contracts/analyses.ts';
import { call } from '#web/ui/http.ts';

export interface WeekSearch {
  plant?: string[];
  currency?: string;
  /** Any day of the week wanted. */
  start?: string;
}

export const weekQuery = (search: WeekSearch) =>
  queryOptions({
    queryKey: ['week', search],
    queryFn: ({ signal }) => call(week, { query: search, signal }),
    placeholderData: keepPreviousData,
  });
