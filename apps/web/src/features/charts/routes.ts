import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { ChartsQuery } from '#contracts/charts.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const chartsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/charts',
  validateSearch: searchOf(ChartsQuery),
  component: lazyRouteComponent(() => import('./charts-page.tsx'), 'ChartsPage'),
});
