import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { AnalysisFilter } from '#contracts/shared/filter.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';
import { weights } from './weights.ts';

export const escapesRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/escapes',
  validateSearch: searchOf(AnalysisFilter.extend({ weight: z.enum(weights) })),
  component: lazyRouteComponent(() => import('./escapes-page.tsx'), 'EscapesPage'),
});
