import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { Id } from '#contracts/shared/scalars.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const containmentsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/containment',
  validateSearch: searchOf(z.object({ state: z.enum(['closed', 'all']).optional() })),
  component: lazyRouteComponent(() => import('./containments-page.tsx'), 'ContainmentsPage'),
});
export const newContainmentRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/containment/new',
  validateSearch: searchOf(z.object({ complaint: Id.optional(), case: Id.optional() })),
  component: lazyRouteComponent(() => import('./new-containment-page.tsx'), 'NewContainmentPage'),
});
export const alertsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/containment/alerts',
  component: lazyRouteComponent(() => import('./alerts-page.tsx'), 'AlertsPage'),
});
export const containmentRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/containment/$id',
  component: lazyRouteComponent(() => import('./containment-page.tsx'), 'ContainmentPage'),
});
