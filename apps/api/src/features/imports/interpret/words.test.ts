import { describe, expect, test } from 'vitest';
import { type Vocabulary, vocabularies } from '#contracts/import-fields.ts';
import { causes } from '#contracts/taxonomy.ts';
import { terms as de } from '#contracts/terms.de.ts';
import { terms as en } from '#contracts/terms.en.ts';
import { fold } from './fold.ts';
import { synonyms } from './word-synonyms.ts';
import { wordOf } from './words.ts';

describe('a word', () => {
  test.each<[Vocabulary, string, string | null]>([
    ['cause', 'WERKZEUG', 'tooling'],
    ['cause', 'nicht eingerastet', 'partial_seat'],
    ['cause', 'test probe', 'probe_damage'],
    ['cause', 'Kleber', 'adhesive'],
    ['origin', 'EOL', 'electrical_test'],
    ['effect', 'Wackel-Kontakt', 'intermittent'],
    ['disposition', 'use as is', 'used_as_is'],
    ['yesNo', 'Ja', 'true'],
    ['cause', 'no idea of ours', null],
  ])('of %s, %j, stands for %j', (vocabulary, text, word) => expect(wordOf(vocabulary, text)).toBe(word));

  test.each(causes)('%s is read in its own wire, English and German form', (cause) => {
    for (const text of [cause, en.cause[cause], de.cause[cause]]) expect(wordOf('cause', text)).toBe(cause);
  });

  test.each(vocabularies)('of %s never stands for two things', (vocabulary) => {
    const meanings = new Map<string, string>();
    for (const [word, texts] of Object.entries(synonyms[vocabulary]))
      for (const text of texts) {
        expect(meanings.get(fold(text)) ?? word, `${text} in ${vocabulary}`).toBe(word);
        expect(wordOf(vocabulary, text), `${text} in ${vocabulary}`).toBe(word);
        meanings.set(fold(text), word);
      }
  });
});
