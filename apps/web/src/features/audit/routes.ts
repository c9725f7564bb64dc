import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { Day, Id, many } from '#contracts/shared/scalars.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const auditRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/audit',
  validateSearch: searchOf(
    z.object({
      plant: many(Id).optional(),
      entity: many(z.string().max(40)).optional(),
      entityId: z.string().max(80).optional(),
      actor: z.string().max(100).optional(),
      from: Day.optional(),
      to: Day.optional(),
    }),
  ),
  component: lazyRouteComponent(() => import('./audit-page.tsx'), 'AuditPage'),
});
