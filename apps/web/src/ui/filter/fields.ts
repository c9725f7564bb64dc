/** What the filter bar offers, in the order of its menu. Plant and period have places of their own. */
import { causes, causeTaxonomy, dispositions, effects, lockStates, sources, stages } from '#contracts/taxonomy.ts';
import type { Terms } from '#contracts/terms.en.ts';
import type { NamedResource } from '#web/ui/lookup.ts';
import type { FilterValues } from './use-filter.ts';

export type Field =
  | { readonly kind: 'words'; readonly words: readonly string[]; readonly labels: keyof Terms; readonly orNone?: true }
  | { readonly kind: 'rows'; readonly resource: NamedResource; readonly orNone: true }
  | { readonly kind: 'marks'; readonly orNone: true }
  | { readonly kind: 'flag' }
  | { readonly kind: 'gates' }
  | { readonly kind: 'cost' }
  | { readonly kind: 'text' }
  | { readonly kind: 'fixed' };

export type FieldName = Exclude<keyof FilterValues, 'from' | 'to' | 'plant' | 'currency'>;

export const fields: Readonly<Record<FieldName, Field>> = {
  cause: { kind: 'words', words: causes, labels: 'cause', orNone: true },
  subCause: {
    kind: 'words',
    words: Object.values(causeTaxonomy).flatMap((cause) => cause.subCauses),
    labels: 'subCause',
    orNone: true,
  },
  found: { kind: 'words', words: stages, labels: 'stage' },
  origin: { kind: 'words', words: stages, labels: 'stage', orNone: true },
  source: { kind: 'words', words: sources, labels: 'source' },
  line: { kind: 'rows', resource: 'lines', orNone: true },
  housing: { kind: 'rows', resource: 'housings', orNone: true },
  terminal: { kind: 'rows', resource: 'terminals', orNone: true },
  wire: { kind: 'rows', resource: 'wires', orNone: true },
  tool: { kind: 'rows', resource: 'tools', orNone: true },
  customer: { kind: 'rows', resource: 'customers', orNone: true },
  station: { kind: 'marks', orNone: true },
  shift: { kind: 'marks', orNone: true },
  cavity: { kind: 'marks', orNone: true },
  cavityNamed: { kind: 'fixed' },
  fixturePosition: { kind: 'marks', orNone: true },
  lot: { kind: 'marks', orNone: true },
  housingLot: { kind: 'marks', orNone: true },
  effect: { kind: 'words', words: effects, labels: 'effect', orNone: true },
  disposition: { kind: 'words', words: dispositions, labels: 'disposition' },
  lock: { kind: 'words', words: lockStates, labels: 'lockState' },
  cost: { kind: 'cost' },
  gates: { kind: 'gates' },
  safety: { kind: 'flag' },
  evidence: { kind: 'flag' },
  avoidable: { kind: 'flag' },
  built: { kind: 'flag' },
  q: { kind: 'text' },
  builtFrom: { kind: 'fixed' },
  builtTo: { kind: 'fixed' },
  import: { kind: 'fixed' },
  except: { kind: 'fixed' },
};

export const fieldNames = Object.keys(fields) as FieldName[];
