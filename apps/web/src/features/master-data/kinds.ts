/** What each kind of master data shows in its list and asks in its form. */
import { masterData } from '#contracts/master-data.ts';
import { usualReplyTimes } from '#contracts/reply-times.ts';
import {
  costRateKinds,
  dispositions,
  retentionStyles,
  secondaryLockKinds,
  stages,
  toolKinds,
} from '#contracts/taxonomy.ts';
import type { Terms } from '#contracts/terms.en.ts';
import type { KindName } from './kind-names.ts';

export type Values = Record<string, unknown>;
export interface Row extends Values {
  id: string;
  version: number;
  retiredAt: string | null;
}
export type Words = keyof Pick<
  Terms,
  'stage' | 'disposition' | 'retentionStyle' | 'secondaryLockKind' | 'toolKind' | 'costRateKind'
>;

export type Field = { name: string; optional?: boolean } & (
  | {
      type:
        | 'text'
        | 'plant'
        | 'day'
        | 'switch'
        | 'tags'
        | 'currency'
        | 'zone'
        | 'locale'
        | 'paper'
        | 'replyTimes'
        | 'weekday'
        | 'decimal';
    }
  | { type: 'choice'; words: Words; options: readonly string[] }
  | { type: 'count'; min?: number }
  | { type: 'measure'; unit: 'N' | 'mm'; decimals: number }
  /** A cross-section in mm² with its gauge. */
  | { type: 'section' }
  | { type: 'money' }
  | { type: 'face' }
);

export interface KindView {
  name: Exclude<KindName, 'group'>;
  /** The contract, its types erased: the form works on values by field name. */
  resource: (typeof masterData)[keyof typeof masterData];
  fields: readonly Field[];
  columns: readonly string[];
  blank: Values;
}

const code: Field = { name: 'code', type: 'text' };
const name: Field = { name: 'name', type: 'text' };
const plant: Field = { name: 'plantId', type: 'plant' };
const coded = { code: '', name: '' };

const views: readonly KindView[] = [
  {
    name: 'plants',
    resource: masterData.plants,
    fields: [
      code,
      name,
      { name: 'zone', type: 'zone' },
      { name: 'currency', type: 'currency' },
      { name: 'weekStart', type: 'weekday' },
      { name: 'locale', type: 'locale' },
      { name: 'paper', type: 'paper' },
    ],
    columns: ['code', 'name', 'zone', 'currency', 'weekStart'],
    blank: { ...coded, zone: '', currency: '', weekStart: 1, locale: 'en', paper: 'A4' },
  },
  {
    name: 'lines',
    resource: masterData.lines,
    fields: [plant, code, name],
    columns: ['code', 'name', 'plantId'],
    blank: { plantId: null, ...coded },
  },
  {
    name: 'stages',
    resource: masterData.stages,
    fields: [
      plant,
      { name: 'position', type: 'count', min: 1 },
      code,
      name,
      { name: 'common', type: 'choice', words: 'stage', options: stages },
    ],
    columns: ['position', 'code', 'name', 'common', 'plantId'],
    blank: { plantId: null, ...coded, position: '', common: null },
  },
  {
    name: 'housings',
    resource: masterData.housings,
    fields: [
      code,
      name,
      { name: 'retentionStyle', type: 'choice', words: 'retentionStyle', options: retentionStyles },
      { name: 'secondaryLock', type: 'choice', words: 'secondaryLockKind', options: secondaryLockKinds },
      { name: 'safetyRelevant', type: 'switch' },
      { name: 'rows', type: 'count', min: 1 },
      { name: 'columns', type: 'count', min: 1 },
      { name: 'missingCavities', type: 'face' },
    ],
    columns: ['code', 'name', 'cavities', 'retentionStyle', 'secondaryLock', 'safetyRelevant'],
    blank: {
      ...coded,
      retentionStyle: null,
      secondaryLock: null,
      safetyRelevant: false,
      rows: 2,
      columns: 6,
      missingCavities: [],
    },
  },
  {
    name: 'terminals',
    resource: masterData.terminals,
    fields: [
      code,
      name,
      { name: 'wireMinMm2', type: 'section' },
      { name: 'wireMaxMm2', type: 'section' },
      { name: 'minRetentionN', type: 'measure', unit: 'N', decimals: 2, optional: true },
      { name: 'approvedToolTypes', type: 'tags', optional: true },
    ],
    columns: ['code', 'name', 'wireRange', 'minRetentionN', 'approvedToolTypes'],
    blank: { ...coded, wireMinMm2: '', wireMaxMm2: '', minRetentionN: '', approvedToolTypes: [] },
  },
  {
    name: 'wires',
    resource: masterData.wires,
    fields: [
      code,
      name,
      { name: 'sectionMm2', type: 'section' },
      { name: 'insulationMm', type: 'measure', unit: 'mm', decimals: 3, optional: true },
    ],
    columns: ['code', 'name', 'sectionMm2', 'insulationMm'],
    blank: { ...coded, sectionMm2: '', insulationMm: '' },
  },
  {
    name: 'tools',
    resource: masterData.tools,
    fields: [
      plant,
      code,
      name,
      { name: 'kind', type: 'choice', words: 'toolKind', options: toolKinds },
      { name: 'type', type: 'text', optional: true },
      { name: 'cycleCount', type: 'count' },
      { name: 'serviceInterval', type: 'count', min: 1, optional: true },
      { name: 'servicedAtCount', type: 'count' },
      { name: 'servicedOn', type: 'day', optional: true },
    ],
    columns: ['code', 'name', 'kind', 'type', 'service', 'plantId'],
    blank: {
      plantId: null,
      ...coded,
      kind: null,
      type: '',
      cycleCount: 0,
      serviceInterval: '',
      servicedAtCount: 0,
      servicedOn: '',
    },
  },
  {
    name: 'customers',
    resource: masterData.customers,
    fields: [
      code,
      name,
      { name: 'locale', type: 'locale' },
      { name: 'paper', type: 'paper' },
      { name: 'replyTimes', type: 'replyTimes' },
    ],
    columns: ['code', 'name', 'locale', 'paper'],
    blank: { ...coded, locale: 'en', paper: 'A4', replyTimes: usualReplyTimes },
  },
  {
    name: 'cost-rates',
    resource: masterData.costRates,
    fields: [
      plant,
      { name: 'kind', type: 'choice', words: 'costRateKind', options: costRateKinds },
      { name: 'validFrom', type: 'day' },
      { name: 'hourlyMinor', type: 'money' },
    ],
    columns: ['kind', 'validFrom', 'hourlyMinor', 'plantId'],
    blank: { plantId: null, kind: null, validFrom: '', hourlyMinor: '' },
  },
  {
    name: 'standard-costs',
    resource: masterData.standardCosts,
    fields: [
      plant,
      { name: 'stage', type: 'choice', words: 'stage', options: stages },
      { name: 'disposition', type: 'choice', words: 'disposition', options: dispositions },
      { name: 'validFrom', type: 'day' },
      { name: 'terminalMinor', type: 'money' },
    ],
    columns: ['stage', 'disposition', 'validFrom', 'terminalMinor', 'plantId'],
    blank: { plantId: null, stage: null, disposition: null, validFrom: '', terminalMinor: '' },
  },
  {
    name: 'exchange-rates',
    resource: masterData.exchangeRates,
    fields: [
      { name: 'base', type: 'currency' },
      { name: 'quote', type: 'currency' },
      { name: 'validFrom', type: 'day' },
      { name: 'rate', type: 'decimal' },
    ],
    columns: ['pair', 'validFrom', 'rate'],
    blank: { base: '', quote: '', validFrom: '', rate: '' },
  },
];

const byName = new Map<string, KindView>(views.map((view) => [view.name, view]));
export function viewOf(kind: KindView['name']): KindView {
  const view = byName.get(kind);
  if (!view) throw new Error(`There is no kind ${kind}.`);
  return view;
}

/** What the API takes: empty fields as null, a form's own texts as they are. */
export const toInput = ({ fields }: KindView, values: Values): Values =>
  Object.fromEntries(
    fields.map(({ name, optional }) => {
      const value = typeof values[name] === 'string' ? values[name].trim() : values[name];
      return [name, optional && (value === '' || value === undefined) ? null : value];
    }),
  );

/** The form's values of a row: null as empty text. */
export const toValues = ({ fields }: KindView, row: Row): Values =>
  Object.fromEntries(fields.map(({ name }) => [name, row[name] ?? '']));
