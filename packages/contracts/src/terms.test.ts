import { describe, expect, it } from 'vitest';
import { causeTaxonomy } from './taxonomy.ts';
import { terms as de } from './terms.de.ts';
import { terms as en } from './terms.en.ts';

const subCauses = Object.values(causeTaxonomy).flatMap((cause) => cause.subCauses);

describe.each([
  ['en', en],
  ['de', de],
])('labels in %s', (_locale, terms) => {
  it('cover every sub-cause and no other word', () => {
    expect(Object.keys(terms.subCause).sort()).toEqual([...subCauses].sort());
  });

  it('are neither empty nor given twice within one vocabulary', () => {
    for (const labels of Object.values(terms)) {
      const words = Object.values<string>(labels);
      expect(words.every((word) => word.trim() !== '')).toBe(true);
      expect(new Set(words).size).toBe(words.length);
    }
  });
});
