import { z } from 'zod';
import { Answer, FindingCode, FindingUnit } from '#contracts/finding-catalogue.ts';
import { RetentionStyle, SecondaryLockKind } from '#contracts/taxonomy.ts';
import { type Sql, sql } from '#db/sql.ts';

export const StoredFinding = z.object({
  code: FindingCode,
  answer: Answer,
  value: z.coerce.number().nullable(),
  limit: z.coerce.number().nullable(),
  unit: FindingUnit.nullable(),
  note: z.string().nullable(),
  imported: z.boolean(),
  by: z.string(),
  at: z.coerce.date().transform((at) => at.toISOString()),
});
export type StoredFinding = z.output<typeof StoredFinding>;

/** The findings that people took on one report. */
export const storedFindingsSql = (plantId: string, failureId: string): Sql => sql`
  select g.code, g.answer, g.value, g.limit_value as "limit", g.unit, g.note, g.import_id is not null as imported, g.taken_by as by, g.taken_at as at
  from finding g where g.plant_id = ${plantId}::uuid and g.failure_id = ${failureId}::uuid order by g.taken_at, g.code`;

export const FactsRow = z.object({
  id: z.string(),
  wireInRange: z.boolean().nullable(),
  lockState: z.string(),
  sameToolLately: z.boolean().nullable(),
  toolOverdue: z.boolean().nullable(),
  sameFixturePosition: z.boolean().nullable(),
  sameLotElsewhere: z.boolean().nullable(),
  cavities: z.array(z.string()),
  face: z.object({ rows: z.int(), columns: z.int() }).nullable(),
  found: z.int(),
  retention: RetentionStyle.nullable(),
  lockKind: SecondaryLockKind.nullable(),
});
export type FactsRow = z.output<typeof FactsRow>;

/** Another report that was known then. */
const otherReport = sql`o.voided_at is null and o.id <> f.id and o.reported_at <= a.known_at`;
const sameLot = (lot: 'reel_lot' | 'housing_lot') => {
  const column = lot === 'reel_lot' ? sql`reel_lot` : sql`housing_lot`;
  return sql`exists (select 1 from failure o
    where o.search @@ phraseto_tsquery('simple', f.${column}) and o.${column} = f.${column} and ${otherReport}
      and (o.plant_id, o.line_id) is distinct from (f.plant_id, f.line_id))`;
};

/** What the data answers about one report now. */
export const factsSql = (plantId: string, failureId: string): Sql =>
  factsOf(sql`select ${plantId}::uuid as plant_id, ${failureId}::uuid as id, 'infinity'::timestamptz as known_at`);

/**
 * What the data answers about reports, each from what was reported until then: its tool, fixture, lots, wire, lock, cavities and stage.
 *
 * @param asked rows of plant_id, id and known_at
 */
export const factsOf = (asked: Sql): Sql => sql`
  select f.id, w.section_mm2 between t.wire_min_mm2 and t.wire_max_mm2 as "wireInRange", f.lock_state as "lockState",
    case when f.tool_id is not null then exists (select 1 from failure o
      where o.plant_id = f.plant_id and o.tool_id = f.tool_id and o.found_on >= f.found_on - 14 and o.found_on <= f.found_on + 14
        and ${otherReport}) end as "sameToolLately",
    case when l.service_interval is not null then l.due end as "toolOverdue",
    case when f.fixture_position is not null then exists (select 1 from failure o
      where o.plant_id = f.plant_id and o.fixture_position = f.fixture_position and o.found_on >= f.found_on - 60
        and o.found_on <= f.found_on + 60 and ${otherReport}) end as "sameFixturePosition",
    case when f.reel_lot is not null or f.housing_lot is not null
      then coalesce(${sameLot('reel_lot')}, false) or coalesce(${sameLot('housing_lot')}, false) end as "sameLotElsewhere",
    f.cavities, case when h.id is not null then json_build_object('rows', h.rows, 'columns', h.columns) end as face, f.found,
    h.retention_style as retention, h.secondary_lock as "lockKind"
  from (${asked}) a join failure f on f.plant_id = a.plant_id and f.id = a.id
  left join terminal t on t.id = f.terminal_id
  left join wire w on w.id = f.wire_id
  left join tool l on l.id = f.tool_id
  left join housing h on h.id = f.housing_id`;
