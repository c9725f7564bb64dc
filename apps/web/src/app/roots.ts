/** The two roots of every page: anyone, and people who are signed in. Features hang their routes below them. */
import type { QueryClient } from '@tanstack/react-query';
import { createRootRouteWithContext, createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { ProblemError } from '#web/ui/http.ts';
import { meQuery } from '#web/ui/person.ts';
import { NotFound } from './not-found.tsx';
import { PageError } from './page-error.tsx';

export const root = createRootRouteWithContext<{ queryClient: QueryClient }>()({
  notFoundComponent: NotFound,
  errorComponent: PageError,
});

/** Sends strangers to the sign-in page (keeping the address) and first passwords to be changed. */
export const signedIn = createRoute({
  getParentRoute: () => root,
  id: 'signed-in',
  component: lazyRouteComponent(() => import('./shell.tsx'), 'Shell'),
  beforeLoad: async ({ context, location }) => {
    const person = await context.queryClient.ensureQueryData(meQuery).catch((error: unknown) => {
      const stranger = error instanceof ProblemError && error.problem.status === 401;
      if (stranger) throw redirect({ to: '/sign-in', search: { next: location.href } });
      throw error;
    });
    if (person.mustChangePassword) throw redirect({ to: '/first-password', search: { next: location.href } });
    return { person };
  },
});
