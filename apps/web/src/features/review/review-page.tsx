import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { WeekSteps } from '#web/ui/week-steps.tsx';
import { Editions } from './editions.tsx';
import { PastReviews } from './past-reviews.tsx';
import { weekReviewQuery } from './queries.ts';
import classes from './review.module.css';
import { ReviewView } from './review-view.tsx';
import { reviewRoute } from './routes.ts';
import { StateBar } from './state-bar.tsx';
import { Subscription } from './subscription.tsx';
import { useReviewWords } from './use-words.ts';

export const ReviewPage = () => {
  const words = useReviewWords();
  const format = useFormat();
  const search = reviewRoute.useSearch();
  const navigate = useNavigate({ from: reviewRoute.fullPath });
  const query = useQuery(weekReviewQuery(search));
  const period = query.data?.content.period;
  const goTo = (start: string) => void navigate({ search: (now) => ({ ...now, start }), resetScroll: false });

  return (
    <>
      <PageHead title={period ? `${words.title} ${format.week(period.from)}` : words.title} />
      <div className={classes.choice}>
        {period && <WeekSteps period={period} onStart={goTo} />}
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
