import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { z } from 'zod';
import { root, signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

/** Only an address of our own: never `//elsewhere` nor `https://elsewhere`. */
const next = searchOf(z.object({ next: z.string().regex(/^\/(?![/\\])/) }));

export const signInRoute = createRoute({
  getParentRoute: () => root,
  path: '/sign-in',
  validateSearch: next,
  component: lazyRouteComponent(() => import('./sign-in-page.tsx'), 'SignInPage'),
});

export const firstPasswordRoute = createRoute({
  getParentRoute: () => root,
  path: '/first-password',
  validateSearch: next,
  component: lazyRouteComponent(() => import('./first-password-page.tsx'), 'FirstPasswordPage'),
});

export const accountRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/account',
  component: lazyRouteComponent(() => import('./account-page.tsx'), 'AccountPage'),
});
