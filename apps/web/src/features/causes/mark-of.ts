import type { Dimension } from '#contracts/shared/dimension.ts';
import { type Cause, causes } from '#contracts/taxonomy.ts';
import { causeMarks, type Mark, otherMark, plainMark } from '#web/app/theme.ts';

const isCause = (word: string): word is Cause => causes.some((cause) => cause === word);

/** Causes have their own marks everywhere; the bars of any other dimension share one. */
export const markOf = (dimension: Dimension, key: string): Mark => {
  if (key === 'none') return otherMark;
  return dimension === 'cause' && isCause(key) ? causeMarks[key] : plainMark;
};
