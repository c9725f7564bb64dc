import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { ActionFilter } from '#contracts/actions.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const actionsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/actions',
  validateSearch: searchOf(ActionFilter),
  component: lazyRouteComponent(() => import('./actions-page.tsx'), 'ActionsPage'),
});
export const actionRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/actions/$id',
  component: lazyRouteComponent(() => import('./action-page.tsx'), 'ActionPage'),
});
