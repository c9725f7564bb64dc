/** A session that ended while a page was open: to the sign-in page, and back to the same address afterwards. */
import type { QueryClient } from '@tanstack/react-query';
import { ProblemError } from '#web/ui/http.ts';
import { router } from './router.tsx';

const signInFirst = (error: unknown): boolean =>
  error instanceof ProblemError && error.problem.code === 'sign_in_required';

export const watchForLostSession = (queries: QueryClient): void => {
  const leave = () => {
    const { pathname, href } = router.state.location;
    if (pathname === '/sign-in' || router.state.status === 'pending') return;
    queries.clear();
    void router.navigate({ to: '/sign-in', search: { next: href } });
  };
  queries.getQueryCache().subscribe((event) => {
    if (event.type === 'updated' && event.action.type === 'error' && signInFirst(event.action.error)) leave();
  });
  queries.getMutationCache().subscribe((event) => {
    if (event.type === 'updated' && event.action.type === 'error' && signInFirst(event.action.error)) leave();
  });
};
