import type { ReviewContent } from '#contracts/review-content.ts';
import { signalSentence } from '#contracts/signal-words.ts';
import { useFormat, useLocale } from '#web/ui/language.ts';
import { AddressLink } from '#web/ui/reports-link.tsx';
import classes from './review.module.css';
import { useReviewWords } from './use-words.ts';

/** The sentence a person would say, which opens its reports. */
export const SignalList = ({ signals }: { signals: ReviewContent['signals'] }) => {
  const { said, nothing } = useReviewWords();
  const format = useFormat();
  const locale = useLocale();
  const { list, more, silenced, falseDiscoveryRate, tested } = signals;
  return (
    <>
      {list.length === 0 && <p>{nothing.signals}</p>}
      <ol className={classes.signals}>
        {list.map((signal) => (
          <li key={signal.key}>
            <AddressLink address={`/failures?${signal.filter}`}>{signalSentence(signal, locale)}</AddressLink>
            {signal.echoes > 0 && <small>{said.echoes(format.count(signal.echoes))}</small>}
            {signal.back && <small>{said.back}</small>}
          </li>
        ))}
      </ol>
      <p className={classes.about}>
        {more > 0 && `${said.more(format.count(more))} · `}
        {silenced > 0 && `${said.silenced(format.count(silenced))} · `}
        {said.held(format.percent(falseDiscoveryRate, 0), format.count(tested))}
      </p>
    </>
  );
};
