import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { RecordFilter } from '#contracts/evidence.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const checklistRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/failures/$id/checklist',
  component: lazyRouteComponent(() => import('./checklist/checklist-page.tsx'), 'ChecklistPage'),
});

export const trackRecordRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/evidence/record',
  validateSearch: searchOf(RecordFilter),
  component: lazyRouteComponent(() => import('./record/record-page.tsx'), 'RecordPage'),
});

export const opinionsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/evidence/opinions',
  component: lazyRouteComponent(() => import('./opinions/opinions-page.tsx'), 'OpinionsPage'),
});

export const opinionRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/evidence/opinions/$id',
  component: lazyRouteComponent(() => import('./opinions/opinion-page.tsx'), 'OpinionPage'),
});
