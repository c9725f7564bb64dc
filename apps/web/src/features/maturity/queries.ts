import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { maturity } from '#contracts/maturity.ts';
import { call } from '#web/ui/http.ts';

export const maturityQuery = (query: object) =>
  queryOptions({
    queryKey: ['analyses', 'maturity', query],
    queryFn: ({ signal }) => call(maturity, { query, signal }),
    placeholderData: keepPreviousData,
  });
