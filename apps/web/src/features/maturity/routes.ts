import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { maturity } from '#contracts/maturity.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const maturityRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/maturity',
  validateSearch: searchOf(maturity.query!),
  component: lazyRouteComponent(() => import('./maturity-page.tsx'), 'MaturityPage'),
});
