/** The one filter of lists and analyses; it lives in the page's address and in the API's query string. */
import { z } from 'zod';
import { causes, dispositions, effects, lockStates, sources, stages } from '../taxonomy.ts';
import { Dimension, dimensions } from './dimension.ts';
import { Currency, Day, each, Id, many } from './scalars.ts';

/** `none` selects rows where the field is empty. */
const orNone = <Item extends z.ZodType>(item: Item) => many(z.union([item, z.literal('none')])).optional();
const mark = z.string().trim().min(1).max(80);
/** Marks may hold commas, so several are given by repeating the key only. */
const marks = each(mark).optional();

const Fields = z.object({
  from: Day.optional().describe('first day found, inclusive'),
  to: Day.optional().describe('day after the last day found'),
  builtFrom: Day.optional().describe('first day built, inclusive; the day found where the day built is not known'),
  builtTo: Day.optional().describe('day after the last day built, likewise'),
  plant: many(Id).optional(),
  line: orNone(Id),
  station: marks,
  shift: marks,
  source: many(z.enum(sources)).optional(),
  found: many(z.enum(stages)).optional().describe('stage that found it'),
  origin: orNone(z.enum(stages)),
  cause: orNone(z.enum(causes)),
  subCause: marks,
  housing: orNone(Id),
  terminal: orNone(Id),
  wire: orNone(Id),
  tool: orNone(Id).describe('the tool named first'),
  cavity: marks.describe('a cavity such as A1, or `several` where more than one is named'),
  fixturePosition: marks.describe('position in the test fixture'),
  cavityNamed: marks.describe('a cavity that the report names, alone or among several'),
  lot: marks.describe('reel lot'),
  housingLot: marks,
  customer: orNone(Id),
  effect: orNone(z.enum(effects)),
  disposition: many(z.enum(dispositions)).optional(),
  lock: many(z.enum(lockStates)).optional(),
  safety: z.stringbool().optional(),
  gates: z.coerce.number().int().min(0).max(9).optional().describe('passed at least this many gates'),
  cost: z.enum(['booked', 'estimated', 'none']).optional().describe('has a booked cost, has an estimate, has no cost'),
  evidence: z.stringbool().optional().describe('has a photo or a written proof of its cause'),
  avoidable: z.stringbool().optional().describe('was found later than the first gate able to see it'),
  built: z.stringbool().optional().describe('the day it was built is known'),
  import: Id.optional(),
  q: z.string().trim().min(1).max(200).optional().describe('full text over notes, numbers, marks and codes'),
});

/** `dimension:key` with a key that the dimension's own field would take. */
const Exception = z.string().refine(
  (text) => {
    const [, dimension, key] = /^(\w+):(.+)$/su.exec(text) ?? [];
    const known = dimensions.find((name) => name === dimension);
    return known !== undefined && Fields.shape[known].safeParse([key]).success;
  },
  `must be a dimension (${dimensions.join(', ')}), a colon and one of its values`,
);

export const Filter = Fields.extend({
  except: each(Exception).optional().describe('`dimension:key`, repeated: reports that none of them selects'),
});
export type Filter = z.infer<typeof Filter>;

/** The keys that the filter excepts, per dimension. */
export function exceptionsOf(filter: Filter): Map<Dimension, string[]> {
  const keys = new Map<Dimension, string[]>();
  for (const text of filter.except ?? []) {
    const colon = text.indexOf(':');
    const dimension = Dimension.parse(text.slice(0, colon));
    keys.set(dimension, [...(keys.get(dimension) ?? []), text.slice(colon + 1)]);
  }
  return keys;
}

/** Analyses always have a period; the default is the last 13 full weeks. */
export const AnalysisFilter = Filter.extend({
  currency: Currency.optional().describe('default: the currency of the one plant chosen, else of the group'),
});
export type AnalysisFilter = z.infer<typeof AnalysisFilter>;
