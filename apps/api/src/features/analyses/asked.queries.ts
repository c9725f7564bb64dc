import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import type { Database } from '#db/client.ts';
import { queryRows, sql } from '#db/sql.ts';

const Plant = z.object({
  id: z.string(),
  code: z.string(),
  zone: z.string(),
  currency: z.string(),
  week_start: z.number(),
  stages: z.array(z.number()),
});
export type AskedPlant = z.infer<typeof Plant>;

/** The plants asked for, with the numbers of the common stages they have. */
export const readPlants = (db: Database, scope: PlantScope): Promise<AskedPlant[]> =>
  queryRows(
    db.pool,
    sql`select p.id, p.code, p.zone, p.currency, p.week_start,
        array(select distinct s.common from stage s where s.plant_id = p.id and s.retired_at is null order by 1) as stages
      from plant p where ${scope === 'all'} or p.id = any(${scope === 'all' ? [] : [...scope]}::uuid[]) order by p.code`,
    Plant,
    { name: 'analysis-plants' },
  );

const Group = z.object({
  currency: z.string(),
  rates: z.array(z.object({ from: z.string(), to: z.string(), day: z.string(), rate: z.string() })),
});

/** The group's currency and every exchange rate on record. */
export const readGroup = async (db: Database): Promise<z.infer<typeof Group>> =>
  (
    await queryRows(
      db.pool,
      sql`select o.currency, coalesce((
          select json_agg(json_build_object('from', e.base, 'to', e.quote, 'day', e.valid_from, 'rate', e.rate::text))
          from exchange_rate e where e.retired_at is null), '[]') as rates
        from organisation o`,
      Group,
      { name: 'analysis-group' },
    )
  )[0]!;
