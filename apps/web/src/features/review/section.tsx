import { type ReactNode, useId } from 'react';
import type { ReviewPart } from '#contracts/review-terms.en.ts';
import classes from './review.module.css';
import { useReviewWords } from './use-words.ts';

interface Props {
  part: ReviewPart;
  /** Nothing to show: says so in a sentence. */
  empty?: boolean;
  wide?: boolean;
  children?: ReactNode;
}

/** One part of the review: its name, what it says and when not to trust it. */
export const Section = ({ part, empty, wide, children }: Props) => {
  const words = useReviewWords();
  const id = useId();
  return (
    <section className={classes.part} data-wide={wide || undefined} aria-labelledby={id}>
      <h2 id={id}>{words.part[part]}</h2>
      <p className={classes.about}>{words.about[part]}</p>
      {empty ? <p>{words.nothing[part]}</p> : children}
    </section>
  );
};
