import type { Day } from '../calendar/day.ts';
import type { CountedExposure } from '../rates/rate-ratio.ts';
import { type EffectJudgement, judgeEffect, type Promised } from './judge-effect.ts';

/** What was counted from the clean point to the end of this day. */
export type Look = { day: Day; after: CountedExposure };

export type JudgedLook = Look & { judgement: EffectJudgement };

export type EffectHistory = {
  looks: JudgedLook[];
  /** first look that showed a lower rate than before */
  shownOn: Day | null;
  /** first look that excluded the promise; it outweighs an earlier `shownOn` */
  excludedOn: Day | null;
  verdict: EffectJudgement['verdict'];
};

/**
 * The judgement at every look, for the time axis. A claim once made stays made: the bound covers all looks, so the strongest
 * evidence so far counts, not the last.
 *
 * @param looks in order of time, counts cumulated from the clean point
 */
export function judgeOverTime(promised: Promised, looks: readonly Look[]): EffectHistory {
  const judged = looks.map((look) => ({ ...look, judgement: judgeEffect(promised, look.after) }));
  const firstDay = (claim: 'reductionShown' | 'promiseExcluded'): Day | null =>
    judged.find(({ judgement }) => judgement[claim])?.day ?? null;
  const shownOn = firstDay('reductionShown');
  const excludedOn = firstDay('promiseExcluded');
  return {
    looks: judged,
    shownOn,
    excludedOn,
    verdict: excludedOn ? 'did_not_hold' : shownOn ? 'held' : 'not_shown_yet',
  };
}
