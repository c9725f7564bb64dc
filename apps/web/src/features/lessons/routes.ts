import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const lessonsRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/lessons',
  validateSearch: searchOf(z.object({ q: z.string().trim().min(1).max(200).optional() })),
  component: lazyRouteComponent(() => import('./lessons-page.tsx'), 'LessonsPage'),
});
