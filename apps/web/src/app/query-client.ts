import { QueryClient } from '@tanstack/react-query';
import { ProblemError } from '#web/ui/http.ts';

const worthRetrying = (failures: number, error: unknown): boolean =>
  failures < 2 && error instanceof ProblemError && (error.problem.status === 0 || error.problem.status >= 502);

export const queryClient = new QueryClient({
  defaultOptions: {
    queries: { staleTime: 30_000, retry: worthRetrying, refetchOnWindowFocus: false, networkMode: 'always' },
    mutations: { retry: false, networkMode: 'always' },
  },
});
