import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';
import { steps } from './steps.ts';

export const importsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/imports',
  component: lazyRouteComponent(() => import('./imports-page.tsx'), 'ImportsPage'),
});

export const importRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/imports/$id',
  validateSearch: searchOf(z.object({ step: z.enum(steps).optional() })),
  component: lazyRouteComponent(() => import('./import-page.tsx'), 'ImportPage'),
});
