/** Words of the fixed vocabularies in the languages and habits of the trade. */

import type { Vocabulary } from '#contracts/import-fields.ts';
import * as taxonomy from '#contracts/taxonomy.ts';
import { terms as de } from '#contracts/terms.de.ts';
import { terms as en, type Terms } from '#contracts/terms.en.ts';
import { fold } from './fold.ts';
import { synonyms } from './word-synonyms.ts';

type Label = keyof Pick<
  Terms,
  | 'source'
  | 'effect'
  | 'lockState'
  | 'disposition'
  | 'cause'
  | 'subCause'
  | 'stage'
  | 'costCategory'
  | 'costBasis'
  | 'forceKind'
>;

const subCauses = Object.values(taxonomy.causeTaxonomy).flatMap((cause) => cause.subCauses);
const words: Record<Vocabulary, { words: readonly string[]; label?: Label }> = {
  source: { words: taxonomy.sources, label: 'source' },
  effect: { words: taxonomy.effects, label: 'effect' },
  lockState: { words: taxonomy.lockStates, label: 'lockState' },
  disposition: { words: taxonomy.dispositions, label: 'disposition' },
  cause: { words: taxonomy.causes, label: 'cause' },
  subCause: { words: subCauses, label: 'subCause' },
  origin: { words: taxonomy.stages, label: 'stage' },
  costCategory: { words: taxonomy.costCategories, label: 'costCategory' },
  costBasis: { words: taxonomy.costBases, label: 'costBasis' },
  yesNo: { words: ['true', 'false'] },
  forceKind: { words: taxonomy.forceKinds, label: 'forceKind' },
  forceUnit: { words: taxonomy.forceUnits },
};

const lookups = new Map(
  Object.keys(words).map((vocabulary) => [vocabulary as Vocabulary, lookupOf(vocabulary as Vocabulary)]),
);

/** The word that a text stands for in a vocabulary, or null. */
export const wordOf = (vocabulary: Vocabulary, text: string): string | null =>
  lookups.get(vocabulary)!.get(fold(text)) ?? null;

export const isWord = (vocabulary: Vocabulary, word: string): boolean => words[vocabulary].words.includes(word);

function lookupOf(vocabulary: Vocabulary): Map<string, string> {
  const { words: known, label } = words[vocabulary];
  const lookup = new Map<string, string>();
  for (const word of known) {
    const labels = label ? [en, de].map((terms) => (terms[label] as Record<string, string>)[word] ?? word) : [];
    for (const text of [word, ...labels, ...(synonyms[vocabulary][word] ?? [])]) lookup.set(fold(text), word);
  }
  return lookup;
}
