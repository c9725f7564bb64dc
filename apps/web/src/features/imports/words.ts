import type { Vocabulary } from '#contracts/import-fields.ts';
import { forceUnits } from '#contracts/taxonomy.ts';
import type { Terms } from '#contracts/terms.en.ts';

const labels = {
  source: 'source',
  effect: 'effect',
  lockState: 'lockState',
  disposition: 'disposition',
  cause: 'cause',
  subCause: 'subCause',
  origin: 'stage',
  costCategory: 'costCategory',
  costBasis: 'costBasis',
  forceKind: 'forceKind',
} as const satisfies Partial<Record<Vocabulary, keyof Terms>>;

/** The words of a vocabulary with their labels, as a select takes them. */
export function wordOptions(
  vocabulary: Vocabulary,
  terms: Terms,
  yesNo: readonly [string, string],
): { value: string; label: string }[] {
  if (vocabulary === 'yesNo') return yesNo.map((label, at) => ({ value: at === 0 ? 'true' : 'false', label }));
  if (vocabulary === 'forceUnit') return forceUnits.map((unit) => ({ value: unit, label: unit }));
  return Object.entries<string>(terms[labels[vocabulary]]).map(([value, label]) => ({ value, label }));
}
