import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { Filter } from '#contracts/shared/filter.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

const { from, to, plant, line, housing, terminal } = Filter.shape;

export const productionRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/production',
  validateSearch: searchOf(z.object({ from, to, plant, line, housing, terminal })),
  component: lazyRouteComponent(() => import('./production-page.tsx'), 'ProductionPage'),
});
