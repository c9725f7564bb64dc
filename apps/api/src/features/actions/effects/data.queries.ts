import { z } from 'zod';
import { filterWhere } from '#api/platform/filter.ts';
import type { EffectScope } from '#contracts/effects.ts';
import { Day } from '#contracts/shared/scalars.ts';
import type { Tx } from '#db/client.ts';
import { empty, raw, type Sql, sql, txRows } from '#db/sql.ts';
import { filterOf } from './scope.ts';

const Reports = z.object({ builtOn: Day, foundOn: Day, reports: z.int() });
const built = raw('coalesce(f.built_on, f.found_on)');

const datedReports = (tx: Tx, where: Sql) =>
  txRows(
    tx,
    sql`select ${built}::text as "builtOn", f.found_on::text as "foundOn", count(*)::int as reports
      from failure_fact f where ${where} group by 1, 2 order by 1, 2`,
    Reports,
  );

/** Reports within the scope on what was built from a day on, by day built and day found. */
export const reportsOf = (tx: Tx, plantId: string, scope: EffectScope, from: string) =>
  datedReports(tx, sql`${filterWhere({ ...filterOf(scope, plantId), from, builtFrom: from }, [plantId])}`);

/**
 * All reports of the plant from the scope's sources on what was built from a day on: how late reports come in. Of what was built
 * before the plant's first report only late ones can be here, so it is left out.
 */
export const delaysOf = (tx: Tx, plantId: string, { sources }: EffectScope, from: string) =>
  datedReports(
    tx,
    sql`${filterWhere({ source: sources.length ? sources : undefined, from, builtFrom: from }, [plantId])} and f.built_on >= (select min(g.found_on) from failure_fact g where g.plant_id = ${plantId}::uuid)`,
  );

/** Terminals inserted a day, within that part of the scope that production is reported by. */
export function buildsOf(tx: Tx, plantId: string, { lineId, housingId, terminalId }: EffectScope, from: string) {
  const by = (column: Sql, id: string | null) => (id ? sql`and ${column} = ${id}::uuid` : empty);
  const whole = !lineId && !housingId && !terminalId;
  return txRows(
    tx,
    sql`select p.day::text as day, sum(p.terminals)::bigint as exposure
      from ${whole ? raw('production_day_fact') : raw('production_fact')} p
      where p.plant_id = ${plantId}::uuid and p.day >= ${from}::date
        ${by(raw('p.line_id'), lineId)} ${by(raw('p.housing_id'), housingId)} ${by(raw('p.terminal_id'), terminalId)}
      group by p.day order by p.day`,
    z.object({ day: Day, exposure: z.number() }),
  );
}
