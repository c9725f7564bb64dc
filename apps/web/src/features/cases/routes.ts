import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { Id, many } from '#contracts/shared/scalars.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const CaseSearch = z.object({
  plant: many(Id).optional(),
  state: many(z.enum(['open', 'closed', 'dropped'])).optional(),
  q: z.string().trim().max(100).optional(),
  complaint: Id.optional().describe('open a case for this complaint'),
});
export const casesRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/cases',
  validateSearch: searchOf(CaseSearch),
  component: lazyRouteComponent(() => import('./cases-page.tsx'), 'CasesPage'),
});

export const caseRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/cases/$id',
  validateSearch: searchOf(z.object({ d: z.coerce.number().int().min(0).max(9).optional() })),
  component: lazyRouteComponent(() => import('./case-page.tsx'), 'CasePage'),
});
