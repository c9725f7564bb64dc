import type { Dimension } from '#contracts/shared/dimension.ts';
import { type Stage, stageNumber } from '#contracts/taxonomy.ts';
import { raw, type Sql } from '#db/sql.ts';

export interface DimensionColumn {
  /** over `failure_fact f` */
  column: Sql;
  cast: Sql;
  /** the stored value of a word of the filter */
  toValue: (word: string) => string | number;
  /** free text, where somebody may have written the word `none`: it then counts as empty */
  free: boolean;
}

const text = raw('text');
const uuid = raw('uuid');
const smallint = raw('smallint');
const of = (column: Sql, cast: Sql): DimensionColumn => ({ column, cast, toValue: String, free: cast === text });
const stage = (column: Sql): DimensionColumn => ({
  ...of(column, smallint),
  toValue: (word) => stageNumber(word as Stage),
});

/** Where each dimension of the filter and of the analyses is kept. */
export const dimensionColumns: Record<Dimension, DimensionColumn> = {
  cause: of(raw('f.cause'), raw('cause')),
  subCause: of(raw('f.sub_cause'), text),
  plant: of(raw('f.plant_id'), uuid),
  line: of(raw('f.line_id'), uuid),
  station: of(raw('f.station'), text),
  shift: of(raw('f.shift'), text),
  housing: of(raw('f.housing_id'), uuid),
  terminal: of(raw('f.terminal_id'), uuid),
  wire: of(raw('f.wire_id'), uuid),
  cavity: of(raw('f.cavity'), text),
  tool: of(raw('f.tool_id'), uuid),
  lot: of(raw('f.reel_lot'), text),
  housingLot: of(raw('f.housing_lot'), text),
  customer: of(raw('f.customer_id'), uuid),
  found: stage(raw('f.found')),
  origin: stage(raw('f.origin')),
  effect: of(raw('f.effect'), raw('effect')),
  source: of(raw('f.source'), raw('source')),
};
