import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { Filter } from '#contracts/shared/filter.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const failuresRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/failures',
  validateSearch: searchOf(Filter),
  component: lazyRouteComponent(() => import('./list/failures-page.tsx'), 'FailuresPage'),
});

export const newReportRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/failures/new',
  component: lazyRouteComponent(() => import('./form/new-report-page.tsx'), 'NewReportPage'),
});

export const reportRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/failures/$id',
  component: lazyRouteComponent(() => import('./report/report-page.tsx'), 'ReportPage'),
});

export const recordRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/record',
  component: lazyRouteComponent(() => import('./record/record-page.tsx'), 'RecordPage'),
});
