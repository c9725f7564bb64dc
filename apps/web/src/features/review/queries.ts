import { infiniteQueryOptions, keepPreviousData, queryOptions, useQueryClient } from '@tanstack/react-query';
import { listReviews, readReview, readSubscriptions, readWeekReview } from '#contracts/review.ts';
import { call } from '#web/ui/http.ts';

export interface ReviewSearch {
  plant?: string[];
  /** Any day of the week wanted. */
  start?: string;
  /** Counted now, even where one is kept. */
  live?: boolean;
}

export const weekReviewQuery = ({ live, ...search }: ReviewSearch) =>
  queryOptions({
    queryKey: ['review', 'week', { ...search, live }],
    queryFn: ({ signal }) => call(readWeekReview, { query: { ...search, ...(live && { live: 'true' }) }, signal }),
    placeholderData: keepPreviousData,
  });

export const keptReviewQuery = (id: string) =>
  queryOptions({
    queryKey: ['review', 'kept', id],
    queryFn: ({ signal }) => call(readReview, { params: { id }, signal }),
  });

export const pastReviewsQuery = (plant: string[] | undefined) =>
  infiniteQueryOptions({
    queryKey: ['review', 'past', plant],
    queryFn: ({ signal, pageParam }) =>
      call(listReviews, { query: { plant, limit: 10, ...(pageParam && { cursor: pageParam }) }, signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
  });

export const subscriptionsQuery = queryOptions({
  queryKey: ['review', 'subscriptions'],
  queryFn: ({ signal }) => call(readSubscriptions, { signal }),
});

/** What was decided or closed changes the review wherever it is shown. */
export const useForgetReviews = () => {
  const queries = useQueryClient();
  return () =>
    Promise.all([
      queries.invalidateQueries({ queryKey: ['review'] }),
      queries.invalidateQueries({ queryKey: ['actions'] }),
    ]);
};
