import type { z } from 'zod';
import { type FieldName, importFields } from '#contracts/import-fields.ts';
import type { Mapping } from '#contracts/imports.ts';
import type { Problem } from '#contracts/shared/problem.ts';
import { costCategories } from '#contracts/taxonomy.ts';

type Errors = NonNullable<z.infer<typeof Problem>['errors']>;
const amounts = new Set<string>(['costAmount', ...costCategories.map((category) => `cost.${category}`)]);

/** What is wrong with a mapping in itself. */
export function mappingErrors(kind: keyof typeof importFields, mapping: Mapping, columns: number): Errors {
  const errors: Errors = [];
  const fields = importFields[kind];
  if (mapping.columns.length !== columns)
    errors.push({ path: 'body/columns', message: `must name all ${columns} columns of the file` });
  const seen = new Set<string>();
  for (const [column, field] of mapping.columns.entries()) {
    if (!field) continue;
    if (!(field in fields))
      errors.push({ path: `body/columns/${column}`, message: 'is no field of this kind of import' });
    if (seen.has(field)) errors.push({ path: `body/columns/${column}`, message: 'is given to another column already' });
    seen.add(field);
  }
  for (const field of Object.keys(mapping.fixed))
    if (!(field in fields)) errors.push({ path: `body/fixed/${field}`, message: 'is no field of this kind of import' });
  return errors;
}

/** The fields that a mapping must still state before the file can be read. */
export function missingFields(kind: keyof typeof importFields, mapping: Mapping): FieldName[] {
  const stated = new Set<string>([...mapping.columns.filter((field) => field !== null), ...Object.keys(mapping.fixed)]);
  const missing = Object.entries(importFields[kind]).flatMap(([field, { required }]) =>
    required && !stated.has(field) ? [field as FieldName] : [],
  );
  if ([...stated].some((field) => amounts.has(field)) && !stated.has('costBasis')) missing.push('costBasis');
  if (stated.has('costAmount') && !stated.has('costCategory')) missing.push('costCategory');
  return missing;
}
