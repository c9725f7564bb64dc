import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { GatesQuery } from '#contracts/gates.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const gatesRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/gates',
  validateSearch: searchOf(GatesQuery),
  component: lazyRouteComponent(() => import('./gates-page.tsx'), 'GatesPage'),
});
