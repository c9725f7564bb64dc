import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { EffectVerdict, type JudgedEffect, Prevention } from '#contracts/effects.ts';
import { Interval } from '#contracts/shared/estimate.ts';
import { Cause } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import { empty, queryRows, sql } from '#db/sql.ts';

const Row = z.object({
  actionId: z.string(),
  number: z.string(),
  title: z.string(),
  plantId: z.string(),
  cause: Cause.nullable(),
  prevention: Prevention.nullable(),
  verdict: EffectVerdict,
  judgement: z.object({ ratio: z.number().nullable(), interval: Interval.nullable(), fewerThanPlanned: z.boolean() }),
});

interface Wanted {
  cause?: readonly string[] | undefined;
  prevention?: readonly string[] | undefined;
}

const within = (share: number): number => Math.min(1, Math.max(0, share));

/** Effects that the data have shown or excluded at these plants, newest first: reductions with their interval over all looks. */
export async function judgedEffects(
  db: Database,
  scope: PlantScope,
  { cause, prevention }: Wanted = {},
): Promise<JudgedEffect[]> {
  const rows = await queryRows(
    db.pool,
    sql`select a.id as "actionId", a.number, a.title, a.plant_id as "plantId", e.cause, a.prevention, k.verdict, k.judgement
      from action a join effect_plan e on e.action_id = a.id
      join lateral (select l.verdict, l.judgement from effect_look l where l.action_id = a.id order by l.day desc limit 1) k on true
      where k.verdict <> 'not_shown_yet'
        ${scope === 'all' ? empty : sql`and a.plant_id = any(${[...scope]}::uuid[])`}
        ${cause?.length ? sql`and e.cause = any(${cause}::cause[])` : empty}
        ${prevention?.length ? sql`and a.prevention = any(${prevention}::text[])` : empty}
      order by a.id desc limit 500`,
    Row,
  );
  return rows.flatMap(({ judgement: { ratio, interval, fewerThanPlanned }, ...row }) =>
    ratio === null || interval === null
      ? []
      : [
          {
            ...row,
            fewerThanPlanned,
            reduction: {
              low: interval.high === null ? 0 : within(1 - interval.high),
              likely: within(1 - ratio),
              high: within(1 - interval.low),
            },
          },
        ],
  );
}
