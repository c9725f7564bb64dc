import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { Id } from '#contracts/shared/scalars.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

const DeskSearch = z.object({
  state: z.enum(['closed', 'all']).optional(),
  clock: z.enum(['overdue', 'short']).optional(),
  mine: z.stringbool().optional(),
  safety: z.stringbool().optional(),
  failure: Id.optional(),
  q: z.string().max(200).optional(),
});

export const deskRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/complaints',
  validateSearch: searchOf(DeskSearch),
  component: lazyRouteComponent(() => import('./desk-page.tsx'), 'DeskPage'),
});
export const newComplaintRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/complaints/new',
  component: lazyRouteComponent(() => import('./intake-page.tsx'), 'IntakePage'),
});
export const complaintRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/complaints/$id',
  component: lazyRouteComponent(() => import('./complaint-page.tsx'), 'ComplaintPage'),
});
