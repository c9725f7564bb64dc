import { useQuery } from '@tanstack/react-query';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { Editions } from './editions.tsx';
import { PastReviews } from './past-reviews.tsx';
import { weekReviewQuery } from './queries.ts';
import classes from './review.module.css';
import { ReviewSteps } from './review-steps.tsx';
import { ReviewView } from './review-view.tsx';
import { reviewRoute } from './routes.ts';
import { StateBar } from './state-bar.tsx';
import { Subscription } from './subscription.tsx';
import { useReviewWords } from './use-words.ts';

export const ReviewPage = () => {
  const words = useReviewWords();
  const format = useFormat();
  const search = reviewRoute.useSearch();
  const query = useQuery(weekReviewQuery(search));
  const period = query.data?.content.period;

  return (
    <>
      <PageHead title={period ? `${words.title} ${format.week(period.from)}` : words.title} />
      <div className={classes.choice}>
        <ReviewSteps period={period} />
        <PlantPicker />
      </div>
      <QueryBoundary query={query} height={30}>
        {(review) => (
          <>
            <StateBar review={review} />
            <Editions review={review} />
            <ReviewView key={review.id} review={review} />
          </>
        )}
      </QueryBoundary>
      <div className={classes.halves}>
        <PastReviews plant={search.plant} />
        <Subscription />
      </div>
    </>
  );
};
