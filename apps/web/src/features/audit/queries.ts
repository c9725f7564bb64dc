import { infiniteQueryOptions, keepPreviousData } from '@tanstack/react-query';
import { listAudit } from '#contracts/audit.ts';
import { addDays } from '#contracts/shared/format.ts';
import { call } from '#web/ui/http.ts';

export interface AuditFilter {
  plant?: string[];
  entity?: string[];
  entityId?: string;
  actor?: string;
  /** First and last day, both inclusive, where the reader is. */
  from?: string;
  to?: string;
}

const startOf = (day: string): string => new Date(`${day}T00:00:00`).toISOString();

export const auditQuery = ({ from, to, ...rest }: AuditFilter) =>
  infiniteQueryOptions({
    queryKey: ['audit', { from, to, ...rest }],
    queryFn: ({ signal, pageParam }) =>
      call(listAudit, {
        query: {
          ...rest,
          ...(from && { from: startOf(from) }),
          ...(to && { to: startOf(addDays(to, 1)) }),
          limit: 50,
          ...(pageParam && { cursor: pageParam }),
        },
        signal,
      }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
  });
