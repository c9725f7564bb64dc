import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { gates } from '#contracts/gates.ts';
import { call } from '#web/ui/http.ts';

export const gatesQuery = (query: object) =>
  queryOptions({
    queryKey: ['analyses', 'gates', query],
    queryFn: ({ signal }) => call(gates, { query, signal }),
    placeholderData: keepPreviousData,
  });
