import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { z } from 'zod';
import { Day, Id, many } from '#contracts/shared/scalars.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const masterDataRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/master-data',
  beforeLoad: () => {
    throw redirect({ to: '/master-data/$kind', params: { kind: 'plants' } });
  },
});

const Search = z.object({
  q: z.string().max(100).optional(),
  plant: many(Id).optional(),
  retired: z.stringbool().optional(),
  due: z.stringbool().optional(),
  /** The row being edited, or a new one. */
  row: z.union([Id, z.literal('new')]).optional(),
  on: Day.optional(),
});

const readSearch = searchOf(Search);

export const kindRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/master-data/$kind',
  validateSearch: readSearch,
  component: lazyRouteComponent(() => import('./master-data-page.tsx'), 'MasterDataPage'),
});
