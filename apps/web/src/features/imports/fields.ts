import { type FieldName, importFields } from '#contracts/import-fields.ts';
import type { Import, Mapping } from '#contracts/imports.ts';

type Kind = Import['kind'];
type Stated = Pick<Mapping, 'columns' | 'fixed'>;

export const fieldsOf = (kind: Kind): FieldName[] => Object.keys(importFields[kind]) as FieldName[];
export const typeOf = (kind: Kind, field: FieldName) => importFields[kind][field];
export const isRequired = (kind: Kind, field: FieldName): boolean => Boolean(importFields[kind][field]?.required);

const isAmount = (field: FieldName): boolean => field === 'costAmount' || field.startsWith('cost.');

/** Fields that need a column or a fixed value before the file can be read. */
export function neededFields(kind: Kind, { columns, fixed }: Stated): FieldName[] {
  const stated = [...columns.filter((field) => field !== null), ...(Object.keys(fixed) as FieldName[])];
  const needed = fieldsOf(kind).filter((field) => isRequired(kind, field));
  if (stated.some(isAmount)) needed.push('costBasis');
  if (stated.includes('costAmount')) needed.push('costCategory');
  return needed;
}

export const missingFields = (kind: Kind, mapping: Stated): FieldName[] =>
  neededFields(kind, mapping).filter((field) => !mapping.columns.includes(field) && !mapping.fixed[field]?.trim());
