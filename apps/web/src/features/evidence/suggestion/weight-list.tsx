import { useTranslation } from 'react-i18next';
import type { Suggestion } from '#contracts/evidence.ts';
import { ink } from '#web/app/theme.ts';
import { useFormat } from '#web/ui/language.ts';
import { useFindingTerms } from '../use-findings.ts';
import classes from './suggestion.module.css';
import { weightWords } from './weight-words.ts';

type Weight = Suggestion['weights'][number];

/** What each finding contributed to the leading cause: words and a signed bar. */
export const WeightList = ({ weights }: { weights: readonly Weight[] }) => {
  const longest = Math.max(2.5, ...weights.map(({ logRatio }) => Math.abs(logRatio)));
  return (
    <ul className={classes.list}>
      {weights.map((weight) => (
        <Row key={weight.finding} weight={weight} longest={longest} />
      ))}
    </ul>
  );
};

const Row = ({ weight: { finding, answer, logRatio }, longest }: { weight: Weight; longest: number }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const terms = useFindingTerms();
  const half = (50 * Math.abs(logRatio)) / longest;
  const times = format.significant(Math.exp(logRatio), 2);
  return (
    <li className={classes.weight}>
      <span>
        {terms[finding].name}: <strong>{t(`answer.${answer}`)}</strong>
        <br />
        <small>
          {t(`weight.${weightWords(logRatio)}`)} ({t('weight.times', { times })})
        </small>
      </span>
      <svg width="100%" height="18" aria-hidden="true">
        <title>{''}</title>
        <rect
          x={`${logRatio > 0 ? 50 : 50 - half}%`}
          y="3"
          width={`${half}%`}
          height="12"
          fill={logRatio > 0 ? ink.booked : ink.estimated}
        />
        <line x1="50%" x2="50%" y1="0" y2="18" stroke={ink.strong} />
      </svg>
    </li>
  );
};
