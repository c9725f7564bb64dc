import { Button } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Suggestion } from '#contracts/evidence.ts';
import { causeMarks } from '#web/app/theme.ts';
import { CauseName } from '#web/ui/chart/cause-name.tsx';
import { SvgPatterns, svgFill } from '#web/ui/chart/svg-patterns.tsx';
import { useFormat } from '#web/ui/language.ts';
import classes from './suggestion.module.css';

type Opinion = Suggestion['causes'][number];
const fewest = 4;

/** Probability of each cause with its 90 % interval, most probable first. */
export const CauseBars = ({ causes }: { causes: readonly Opinion[] }) => {
  const { t } = useTranslation('evidence');
  const [all, setAll] = useState(false);
  return (
    <>
      <ol className={classes.list}>
        {(all ? causes : causes.slice(0, fewest)).map((opinion) => (
          <Row key={opinion.cause} opinion={opinion} />
        ))}
      </ol>
      <Button variant="subtle" size="compact-md" className="no-print" onClick={() => setAll(!all)} aria-expanded={all}>
        {t(all ? 'suggestion.showFew' : 'suggestion.showAll')}
      </Button>
    </>
  );
};

const Row = ({ opinion: { cause, probability, interval } }: { opinion: Opinion }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const mark = causeMarks[cause];
  const percent = (share: number) => `${100 * share}%`;
  const high = interval.high ?? 1;
  const line = { x1: percent(interval.low), x2: percent(high), y1: '50%', y2: '50%' };
  return (
    <li className={classes.cause}>
      <CauseName cause={cause} />
      <span>
        <strong>{format.chance(probability)}</strong>{' '}
        <small>{t('suggestion.interval', { low: format.chance(interval.low), high: format.chance(high) })}</small>
      </span>
      <span className={classes.bar} aria-hidden="true">
        <svg width="100%" height="100%">
          <title>{''}</title>
          <SvgPatterns marks={[mark]} />
          <rect width={percent(probability)} height="100%" fill={svgFill(mark)} />
          <line {...line} stroke="var(--ink-sheet)" strokeWidth="6" />
          <line {...line} stroke="var(--ink-strong)" strokeWidth="2.5" />
        </svg>
      </span>
    </li>
  );
};
