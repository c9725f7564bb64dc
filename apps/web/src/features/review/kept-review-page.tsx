import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { Editions } from './editions.tsx';
import { keptReviewQuery } from './queries.ts';
import classes from './review.module.css';
import { ReviewView } from './review-view.tsx';
import { keptReviewRoute } from './routes.ts';
import { StateBar } from './state-bar.tsx';
import { Subscription } from './subscription.tsx';
import { useReviewWords } from './use-words.ts';

export const KeptReviewPage = () => {
  const { t } = useTranslation('review');
  const words = useReviewWords();
  const format = useFormat();
  const { id } = keptReviewRoute.useParams();
  const query = useQuery(keptReviewQuery(id));
  const content = query.data?.content;
  const whose = content && (content.group ? words.group : format.list(content.places.map(({ name }) => name)));

  return (
    <>
      <PageHead title={content ? `${words.title} ${format.week(content.period.from)}` : words.title}>
        {content && `${whose} · ${format.period(content.period.from, content.period.to)}`}
      </PageHead>
      <p className="no-print">
        <AddressLink address="/review">{t('newest')}</AddressLink>
      </p>
      <QueryBoundary query={query} height={30}>
        {(review) => (
          <>
            <StateBar review={review} />
            <Editions review={review} />
            <ReviewView review={review} />
          </>
        )}
      </QueryBoundary>
      <div className={classes.halves}>
        <Subscription />
      </div>
    </>
  );
};
