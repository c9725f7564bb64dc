import { z } from 'zod';
import { filterWhere } from '#api/platform/filter.ts';
import type { ContainmentInput } from '#contracts/containment.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import type { Tx } from '#db/client.ts';
import { empty, type Sql, sql, txOne } from '#db/sql.ts';

export type Scope = Pick<
  ContainmentInput,
  | 'plantId'
  | 'housingIds'
  | 'terminalIds'
  | 'lineIds'
  | 'toolIds'
  | 'reelLots'
  | 'housingLots'
  | 'builtFrom'
  | 'builtTo'
>;

const some = <Item>(items: Item[]): Item[] | undefined => (items.length ? items : undefined);

/** The reports in a scope, as the shared filter says it: the list opened with the same filter counts the same. */
export const filterOf = (scope: Scope): Filter => ({
  plant: [scope.plantId],
  housing: some(scope.housingIds),
  terminal: some(scope.terminalIds),
  line: some(scope.lineIds),
  tool: some(scope.toolIds),
  lot: some(scope.reelLots),
  housingLot: some(scope.housingLots),
  builtFrom: scope.builtFrom,
  builtTo: scope.builtTo,
});

const Built = z.object({ reported: z.int(), units: z.int(), terminals: z.int() });
const Reports = z.object({ reports: z.int(), terminals: z.int() });
const among = (column: Sql, ids: readonly string[]) => (ids.length ? sql`and ${column} = any(${ids}::uuid[])` : empty);

/** What was built in the scope. Production knows part, line and day; a lot or a tool only narrows it further. */
export async function builtIn(tx: Tx, scope: Scope): Promise<z.infer<typeof Built>> {
  const row = await txOne(
    tx,
    sql`select count(*) as reported, coalesce(sum(d.units), 0)::bigint as units, coalesce(sum(d.terminals), 0)::bigint as terminals
      from production d where d.plant_id = ${scope.plantId}::uuid and d.day >= ${scope.builtFrom}::date
        and d.day < ${scope.builtTo}::date ${among(sql`d.housing_id`, scope.housingIds)}
        ${among(sql`d.terminal_id`, scope.terminalIds)} ${among(sql`d.line_id`, scope.lineIds)}`,
    Built,
  );
  return row!;
}

export async function reportsIn(tx: Tx, scope: Scope): Promise<z.infer<typeof Reports>> {
  const row = await txOne(
    tx,
    sql`select count(*) as reports, coalesce(sum(f.terminals), 0)::bigint as terminals from failure_fact f
      where ${filterWhere(filterOf(scope), [scope.plantId])}`,
    Reports,
  );
  return row!;
}
