import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { Filter } from '#contracts/shared/filter.ts';
import { Id, many } from '#contracts/shared/scalars.ts';
import { ForceKind } from '#contracts/taxonomy.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

const { from, to, plant } = Filter.shape;

export const forceRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/force',
  validateSearch: searchOf(z.object({ from, to, plant, kind: ForceKind.optional() })),
  component: lazyRouteComponent(() => import('./force-page.tsx'), 'ForcePage'),
});
export const forceTerminalRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/force/$id',
  validateSearch: searchOf(z.object({ from, to, plant, kind: ForceKind.optional(), tool: many(Id).optional() })),
  component: lazyRouteComponent(() => import('./terminal-page.tsx'), 'TerminalPage'),
});
