import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { Id } from '#contracts/shared/scalars.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const peopleRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/people',
  validateSearch: searchOf(
    z.object({
      q: z.string().max(100).optional(),
      retired: z.stringbool().optional(),
      person: z.union([Id, z.literal('new')]).optional(),
    }),
  ),
  component: lazyRouteComponent(() => import('./people-page.tsx'), 'PeoplePage'),
});

export const tokensRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/tokens',
  component: lazyRouteComponent(() => import('./tokens-page.tsx'), 'TokensPage'),
});
