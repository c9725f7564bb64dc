import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { ParetoQuery } from '#contracts/analyses.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const causesRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/causes',
  validateSearch: searchOf(ParetoQuery),
  component: lazyRouteComponent(() => import('./causes-page.tsx'), 'CausesPage'),
});
