/** What a text of a file means: by what a person said about this source, else by our own words and master data. */
import type { FieldName, Reference, Vocabulary } from '#contracts/import-fields.ts';
import { foldCode } from './fold.ts';
import { perPlant, type ReferenceIndex, type ReferenceRow } from './references.ts';
import { wordOf } from './words.ts';

export interface SavedMeaning {
  field: string;
  plantId: string | null;
  raw: string;
  /** Id of the master data, or word; empty: leave blank. */
  target: string;
}

export interface KnownValues {
  /** null: blank on purpose; undefined: unknown. */
  word(field: FieldName, vocabulary: Vocabulary, text: string): string | null | undefined;
  reference(field: FieldName, of: Reference, plantId: string | null, text: string): ReferenceRow | null | undefined;
}

export function knownValues(index: ReferenceIndex, meanings: readonly SavedMeaning[]): KnownValues {
  const saved = new Map(meanings.map((it) => [keyOf(it.field, it.plantId, it.raw), it.target]));
  return {
    word(field, vocabulary, text) {
      const target = saved.get(keyOf(field, null, text));
      if (target !== undefined) return target === '' ? null : target;
      return wordOf(vocabulary, text) ?? undefined;
    },
    reference(field, of, plantId, text) {
      const target = saved.get(keyOf(field, perPlant.has(of) ? plantId : null, text));
      if (target === '') return null;
      return (target && index.get(target)) || index.find(of, plantId, text) || undefined;
    },
  };
}

const keyOf = (field: string, plantId: string | null, raw: string): string =>
  `${field} ${plantId ?? ''} ${foldCode(raw)}`;
