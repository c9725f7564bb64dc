import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const noticesRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/notices',
  validateSearch: searchOf(z.object({ unread: z.stringbool().optional() })),
  component: lazyRouteComponent(() => import('./notices-page.tsx'), 'NoticesPage'),
});
