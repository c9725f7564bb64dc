import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { readWeekReview } from '#contracts/review.ts';
import { signedIn } from '#web/app/roots.ts';
import { searchOf } from '#web/ui/search.ts';

export const reviewRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/review',
  validateSearch: searchOf(readWeekReview.query!),
  component: lazyRouteComponent(() => import('./review-page.tsx'), 'ReviewPage'),
});
export const keptReviewRoute = createRoute({
  getParentRoute: () => signedIn,
  path: '/review/$id',
  component: lazyRouteComponent(() => import('./kept-review-page.tsx'), 'KeptReviewPage'),
});
