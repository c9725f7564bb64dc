/** The one filter of lists and analyses; it lives in the page's address and in the API's query string. */
import { z } from 'zod';
import { causes, dispositions, effects, lockStates, sources, stages } from '../taxonomy.ts';
import { Currency, Day, Id, many } from './scalars.ts';

/** `none` selects rows where the field is empty. */
const orNone = <Item extends z.ZodType>(item: Item) => many(z.union([item, z.literal('none')])).optional();
const mark = z.string().trim().min(1).max(80);

export const Filter = z.object({
  from: Day.optional().describe('first day found, inclusive'),
  to: Day.optional().describe('day after the last day found'),
  plant: many(Id).optional(),
  line: orNone(Id),
  station: orNone(mark),
  shift: orNone(mark),
  source: many(z.enum(sources)).optional(),
  found: many(z.enum(stages)).optional().describe('stage that found it'),
  origin: orNone(z.enum(stages)),
  cause: orNone(z.enum(causes)),
  subCause: orNone(mark),
  housing: orNone(Id),
  terminal: orNone(Id),
  wire: orNone(Id),
  tool: orNone(Id).describe('the tool named first'),
  cavity: orNone(mark).describe('a cavity such as A1, or `several` where more than one is named'),
  lot: orNone(mark).describe('reel lot'),
  housingLot: orNone(mark),
  customer: orNone(Id),
  effect: orNone(z.enum(effects)),
  disposition: many(z.enum(dispositions)).optional(),
  lock: many(z.enum(lockStates)).optional(),
  safety: z.stringbool().optional(),
  gates: z.coerce.number().int().min(0).max(9).optional().describe('passed at least this many gates'),
  cost: z.enum(['booked', 'estimated', 'none']).optional().describe('has a booked cost, only an estimate, or no cost'),
  evidence: z.stringbool().optional().describe('has a photo or a written proof of its cause'),
  avoidable: z.stringbool().optional().describe('was found later than the first gate able to see it'),
  import: Id.optional(),
  q: z.string().trim().min(1).max(200).optional().describe('full text over notes, numbers, marks and codes'),
});
export type Filter = z.infer<typeof Filter>;

/** Analyses always have a period; the default is the last 13 full weeks. */
export const AnalysisFilter = Filter.extend({
  currency: Currency.optional().describe('default: the currency of the one plant chosen, else of the group'),
});
export type AnalysisFilter = z.infer<typeof AnalysisFilter>;
