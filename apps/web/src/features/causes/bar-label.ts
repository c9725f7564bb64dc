import type { ParetoBar } from '#contracts/analyses.ts';
import type { Dimension } from '#contracts/shared/dimension.ts';
import type { Terms } from '#contracts/terms.en.ts';

const vocabularies: Partial<Record<Dimension, keyof Terms>> = {
  cause: 'cause',
  subCause: 'subCause',
  found: 'stage',
  origin: 'stage',
  effect: 'effect',
  source: 'source',
};

/** What a bar is called: fixed words in the person's language, everything else as the API names it. */
export const barLabel = (
  dimension: Dimension,
  { key, label }: Pick<ParetoBar, 'key' | 'label'>,
  terms: Terms,
  words: { none: string; several: string },
): string => {
  if (key === 'none') return words.none;
  if (dimension === 'cavity' && key === 'several') return words.several;
  const vocabulary = vocabularies[dimension];
  return (vocabulary && (terms[vocabulary] as Record<string, string>)[key]) ?? label;
};
