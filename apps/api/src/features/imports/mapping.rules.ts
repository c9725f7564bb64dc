/** Which field a column probably holds, from its header and its first values. A person confirms it. */
import { type FieldName, type ImportField, importFields, type Reference } from '#contracts/import-fields.ts';
import { readingsOf } from './interpret/date.ts';
import { fold } from './interpret/fold.ts';
import { headers } from './interpret/header-synonyms.ts';
import { readDecimal } from './interpret/number.ts';
import { wordOf } from './interpret/words.ts';

export interface ColumnSample {
  header: string;
  values: readonly string[];
}
/** Whether a text is the code or name of master data of that kind, in any of the person's plants. */
export type IsReference = (of: Reference, text: string) => boolean;

const leastScore = 0.55;

/** One field per column at most, and one column per field: the best matches are given away first. */
export function suggestFields(
  kind: keyof typeof importFields,
  columns: readonly ColumnSample[],
  isReference: IsReference,
): (FieldName | null)[] {
  const candidates = columns.flatMap((column, index) =>
    Object.entries(importFields[kind]).map(([field, type]) => ({
      index,
      field: field as FieldName,
      score: score(column, field as FieldName, type, isReference),
    })),
  );
  const suggestions: (FieldName | null)[] = columns.map(() => null);
  const taken = new Set<FieldName>();
  for (const { index, field, score } of candidates.sort((a, b) => b.score - a.score)) {
    if (score < leastScore || suggestions[index] || taken.has(field)) continue;
    suggestions[index] = field;
    taken.add(field);
  }
  return suggestions;
}

function score(column: ColumnSample, field: FieldName, type: ImportField, isReference: IsReference): number {
  const named = headerLikeness(column.header, headers[field]);
  const values = column.values.filter((value) => value.trim() !== '');
  if (values.length === 0) return named * 0.9;
  const fitting = values.filter((value) => fits(value, type, isReference)).length / values.length;
  if (isTelling(type) && fitting < 0.5) return named * 0.4;
  if (named < 0.6) return type.type === 'reference' && fitting >= 0.9 ? 0.56 + named * 0.1 : 0;
  return named * 0.8 + fitting * 0.2;
}

/** Values say something about these fields even where the words are not known yet: a column of days is never a count. */
const isTelling = ({ type }: ImportField): boolean => ['day', 'count', 'amount', 'decimal', 'currency'].includes(type);

function fits(value: string, field: ImportField, isReference: IsReference): boolean {
  switch (field.type) {
    case 'day':
      return Object.keys(readingsOf(value)).length > 0;
    case 'count':
    case 'amount':
    case 'decimal':
      return readDecimal(value, 'point') !== null || readDecimal(value, 'comma') !== null;
    case 'word':
      return wordOf(field.of, value) !== null;
    case 'reference':
      return isReference(field.of, value) || (field.of === 'stage' && wordOf('origin', value) !== null);
    case 'currency':
      return /^[A-Za-z]{3}$/.test(value.trim());
    default:
      return true;
  }
}

/** 1 for a known header, down to 0: the best likeness to any of the field's headers. */
export function headerLikeness(header: string, known: readonly string[]): number {
  const folded = fold(header.replace(/[([].*?[)\]]/g, ''));
  if (folded === '') return 0;
  return known.reduce((best, name, position) => {
    const likeness = fold(name) === folded ? 1 : sharedPairs(folded, fold(name)) * 0.85;
    return Math.max(best, likeness - position * 0.001);
  }, 0);
}

/** Sørensen–Dice coefficient of the pairs of neighbouring letters. */
function sharedPairs(a: string, b: string): number {
  if (a.length < 3 || b.length < 3) return 0;
  const pairs = new Map<string, number>();
  for (let at = 0; at < a.length - 1; at += 1)
    pairs.set(a.slice(at, at + 2), (pairs.get(a.slice(at, at + 2)) ?? 0) + 1);
  let shared = 0;
  for (let at = 0; at < b.length - 1; at += 1) {
    const left = pairs.get(b.slice(at, at + 2)) ?? 0;
    if (left > 0) {
      shared += 1;
      pairs.set(b.slice(at, at + 2), left - 1);
    }
  }
  return (2 * shared) / (a.length + b.length - 2);
}
