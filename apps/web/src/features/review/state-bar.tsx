/** Where the review stands, and what can be done with it: keep, renew, close, correct, print. */
import { Alert, Anchor, Button, Group } from '@mantine/core';
import { useMutation } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { closeReview, openReview, printReview, printWeekReview, type Review, renewReview } from '#contracts/review.ts';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { addressOf, call } from '#web/ui/http.ts';
import { useFormat, useLocale } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { CorrectionForm } from './correction-form.tsx';
import { useForgetReviews } from './queries.ts';
import classes from './review.module.css';
import { useReviewWords } from './use-words.ts';

const useStand = ({ state, content, closedBy, closedAt, edition, reason }: Review): string => {
  const { stamp } = useReviewWords();
  const format = useFormat();
  const zone = content.places.length === 1 ? content.places[0]?.zone : 'UTC';
  const now =
    state === 'closed' && closedBy && closedAt
      ? `${stamp.closed(closedBy, format.instant(closedAt, zone))}. ${stamp.frozen}`
      : state === 'open'
        ? stamp.open
        : stamp.live;
  const corrected = reason ? [stamp.edition(format.count(edition), reason)] : [];
  return [...corrected, now, stamp.figures(format.instant(content.data.figuresAt, zone))].join(' · ');
};

export const StateBar = ({ review }: { review: Review }) => {
  const { t } = useTranslation('review');
  const { stamp } = useReviewWords();
  const locale = useLocale();
  const navigate = useNavigate();
  const forget = useForgetReviews();
  const stand = useStand(review);
  const { id, version, state, mayWrite, isOver, content } = review;
  const plant = content.group ? [] : content.places.map((place) => place.id);
  const start = content.period.from;
  const keep = useMutation({
    mutationFn: () => call(openReview, { body: { plant, start }, idempotencyKey: uuidv7() }),
    onSuccess: async (kept) => {
      await forget();
      await navigate({ to: '/review/$id', params: { id: kept.id ?? '' } });
    },
  });
  const change = (endpoint: typeof renewReview | typeof closeReview) => ({
    mutationFn: () => call(endpoint, { params: { id: id ?? '' }, version: version ?? 0 }),
    onSuccess: forget,
  });
  const renew = useMutation(change(renewReview));
  const close = useMutation(change(closeReview));
  const sheet = id
    ? addressOf(printReview, { params: { id } })
    : addressOf(printWeekReview, { query: { plant, start, live: 'true' } });
  const inOwn = `${sheet}${sheet.includes('?') ? '&' : '?'}locale=${locale}`;

  return (
    <section className={classes.bar} data-state={state} aria-label={t('stand')}>
      <p role="status">{stand}</p>
      {!review.intact && <Alert color="red.9">{stamp.broken}</Alert>}
      <Group gap="sm" className="no-print">
        {state === 'live' && mayWrite && isOver && review.editions.length === 0 && (
          <Button onClick={() => keep.mutate()} loading={keep.isPending}>
            {t('keep')}
          </Button>
        )}
        {state === 'open' && mayWrite && (
          <>
            <ConfirmButton
              question={t('closeQuestion')}
              confirm={t('close')}
              pending={close.isPending}
              error={close.error}
              onConfirm={() => close.mutateAsync()}
            >
              {t('close')}
            </ConfirmButton>
            <Button variant="default" onClick={() => renew.mutate()} loading={renew.isPending}>
              {t('renew')}
            </Button>
          </>
        )}
        {state === 'closed' && mayWrite && review.editions[0]?.id === id && <CorrectionForm review={review} />}
        <Anchor href={sheet} target="_blank" rel="noopener">
          {t('pdf')}
        </Anchor>
        <Anchor href={inOwn} target="_blank" rel="noopener">
          {t('pdfOwn')}
        </Anchor>
      </Group>
      {[keep.error, renew.error].map((error) => error && <ProblemNote key={error.message} error={error} />)}
    </section>
  );
};
