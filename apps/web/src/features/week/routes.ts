import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { week } from '#contracts/analyses.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const weekRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/',
  validateSearch: searchOf(week.query!),
  component: lazyRouteComponent(() => import('./week-page.tsx'), 'WeekPage'),
});
