import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { AnalysisFilter } from '#contracts/shared/filter.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const signalsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/signals',
  validateSearch: searchOf(AnalysisFilter),
  component: lazyRouteComponent(() => import('./signals-page.tsx'), 'SignalsPage'),
});
