import { useTranslation } from 'react-i18next';
import type { Review } from '#contracts/review.ts';
import { useFormat } from '#web/ui/language.ts';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { useReviewWords } from './use-words.ts';

/** The other editions of the same review: a corrected one never replaces what was closed. */
export const Editions = ({ review }: { review: Review }) => {
  const { t } = useTranslation('review');
  const { stamp } = useReviewWords();
  const format = useFormat();
  const others = review.editions.filter(({ id }) => id !== review.id);
  if (others.length === 0) return null;
  return (
    <ul className="no-print" aria-label={t('editions')}>
      {others.map(({ id, edition, reason }) => (
        <li key={id}>
          <AddressLink address={`/review/${id}`}>
            {reason ? stamp.edition(format.count(edition), reason) : t('edition', { edition: format.count(edition) })}
          </AddressLink>
        </li>
      ))}
    </ul>
  );
};
