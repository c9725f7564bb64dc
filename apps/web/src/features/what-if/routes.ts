import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { AnalysisFilter } from '#contracts/shared/filter.ts';
import { signedIn } from '#web/app/roots.ts';
import { parseSearch, searchOf } from '#web/ui/search.ts';

export const whatIfsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/what-if',
  validateSearch: searchOf(AnalysisFilter.pick({ plant: true }).extend({ retired: z.stringbool() })),
  component: lazyRouteComponent(() => import('./what-ifs-page.tsx'), 'WhatIfsPage'),
});
export const newWhatIfRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/what-if/new',
  validateSearch: searchOf(AnalysisFilter),
  component: lazyRouteComponent(() => import('./editor-pages.tsx'), 'NewWhatIfPage'),
});
export const whatIfRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/what-if/$id',
  component: lazyRouteComponent(() => import('./what-if-page.tsx'), 'WhatIfPage'),
});
export const editWhatIfRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/what-if/$id/change',
  validateSearch: searchOf(AnalysisFilter),
  component: lazyRouteComponent(() => import('./editor-pages.tsx'), 'EditWhatIfPage'),
});

/** The filter that a scenario was kept with. */
export const filterOf = (query: string) => searchOf(AnalysisFilter)(parseSearch(query));
