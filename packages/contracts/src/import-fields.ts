/** What a column of an imported file can mean. The mapping screen, the reader and the documentation read this table. */

import type { z } from 'zod';
import { costCategories, type ImportKind } from './taxonomy.ts';

/** Master data that a cell can name by its code or its name. */
export const references = ['plant', 'line', 'stage', 'housing', 'terminal', 'wire', 'tool', 'customer'] as const;
export type Reference = (typeof references)[number];
/** Fixed vocabularies whose words a cell can hold, in any of our languages. */
export const vocabularies = [
  'source',
  'effect',
  'lockState',
  'disposition',
  'cause',
  'subCause',
  'origin',
  'costCategory',
  'costBasis',
  'yesNo',
  'forceKind',
  'forceUnit',
] as const;
export type Vocabulary = (typeof vocabularies)[number];

export type FieldType =
  | { type: 'reference'; of: Reference; several?: true }
  | { type: 'word'; of: Vocabulary }
  | { type: 'day' }
  | { type: 'count'; min: number; max: number }
  | { type: 'amount' }
  | { type: 'decimal'; min: number; max: number }
  | { type: 'mark' }
  | { type: 'marks' }
  | { type: 'currency' }
  | { type: 'note' };
export type ImportField = FieldType & { required?: true };

const mostTerminals = 2_000_000_000;
const mostProduced = 100_000_000;
const amounts = Object.fromEntries(
  costCategories.map((category) => [`cost.${category}`, { type: 'amount' }]),
) as Record<`cost.${(typeof costCategories)[number]}`, ImportField>;

export const failureFields = {
  plant: { type: 'reference', of: 'plant', required: true },
  foundOn: { type: 'day', required: true },
  stage: { type: 'reference', of: 'stage', required: true },
  quantityFound: { type: 'count', min: 1, max: mostTerminals, required: true },
  source: { type: 'word', of: 'source', required: true },
  externalRef: { type: 'mark' },
  builtOn: { type: 'day' },
  line: { type: 'reference', of: 'line' },
  station: { type: 'mark' },
  shift: { type: 'mark' },
  housing: { type: 'reference', of: 'housing' },
  terminal: { type: 'reference', of: 'terminal' },
  wire: { type: 'reference', of: 'wire' },
  cavities: { type: 'marks' },
  tools: { type: 'reference', of: 'tool', several: true },
  fixturePosition: { type: 'mark' },
  reelLot: { type: 'mark' },
  housingLot: { type: 'mark' },
  serialFrom: { type: 'mark' },
  serialTo: { type: 'mark' },
  customer: { type: 'reference', of: 'customer' },
  customerRef: { type: 'mark' },
  effect: { type: 'word', of: 'effect' },
  quantityInspected: { type: 'count', min: 0, max: mostTerminals },
  lockState: { type: 'word', of: 'lockState' },
  disposition: { type: 'word', of: 'disposition' },
  safety: { type: 'word', of: 'yesNo' },
  cause: { type: 'word', of: 'cause' },
  subCause: { type: 'word', of: 'subCause' },
  origin: { type: 'word', of: 'origin' },
  proof: { type: 'note' },
  findings: { type: 'note' },
  note: { type: 'note' },
  costAmount: { type: 'amount' },
  costCategory: { type: 'word', of: 'costCategory' },
  ...amounts,
  costCurrency: { type: 'currency' },
  costBasis: { type: 'word', of: 'costBasis' },
} as const satisfies Record<string, ImportField>;

export const productionFields = {
  plant: { type: 'reference', of: 'plant', required: true },
  day: { type: 'day', required: true },
  units: { type: 'count', min: 0, max: mostProduced, required: true },
  terminals: { type: 'count', min: 0, max: mostProduced, required: true },
  line: { type: 'reference', of: 'line' },
  housing: { type: 'reference', of: 'housing' },
  terminal: { type: 'reference', of: 'terminal' },
} as const satisfies Record<string, ImportField>;

/** Findings for reports that are here already. A cell holds several (`findings`), or a row holds one (`finding` with `answer`). */
export const findingFields = {
  plant: { type: 'reference', of: 'plant', required: true },
  report: { type: 'mark', required: true },
  findings: { type: 'note' },
  finding: { type: 'mark' },
  answer: { type: 'mark' },
} as const satisfies Record<string, ImportField>;

/** One measured value a row; rows that agree in all but the value are one sample. */
export const forceFields = {
  plant: { type: 'reference', of: 'plant', required: true },
  day: { type: 'day', required: true },
  forceKind: { type: 'word', of: 'forceKind', required: true },
  terminal: { type: 'reference', of: 'terminal', required: true },
  force: { type: 'decimal', min: 0.01, max: 10_000, required: true },
  forceUnit: { type: 'word', of: 'forceUnit', required: true },
  tool: { type: 'reference', of: 'tool' },
  housing: { type: 'reference', of: 'housing' },
  wire: { type: 'reference', of: 'wire' },
  externalRef: { type: 'mark' },
  minForce: { type: 'decimal', min: 0.01, max: 10_000 },
} as const satisfies Record<string, ImportField>;

export type FailureField = keyof typeof failureFields;
export type ProductionField = keyof typeof productionFields;
export type FieldName = FailureField | ProductionField | keyof typeof findingFields | keyof typeof forceFields;

export const importFields: Record<z.infer<typeof ImportKind>, Readonly<Record<string, ImportField>>> = {
  failures: failureFields,
  production: productionFields,
  findings: findingFields,
  force: forceFields,
};
export const fieldNames = [...new Set(Object.values(importFields).flatMap((fields) => Object.keys(fields)))] as [
  FieldName,
  ...FieldName[],
];
