import { z } from 'zod';
import type { Tx } from '#db/client.ts';
import { sql, txOne } from '#db/sql.ts';

/** A containment's number for people: plant, H (held back) and the year, running number, such as `LIS-H26-0003`. */
export const containmentNumber = (plantCode: string, year: number, running: number): string =>
  `${plantCode}-H${String(year % 100).padStart(2, '0')}-${String(running).padStart(4, '0')}`;

/** The next running number of a plant and year; locked until the transaction ends. */
export async function takeNumber(tx: Tx, plantId: string, year: number): Promise<number> {
  const row = await txOne(
    tx,
    sql`insert into containment_counter as c (plant_id, year, last) values (${plantId}::uuid, ${year}, 1)
      on conflict (plant_id, year) do update set last = c.last + 1 returning c.last`,
    z.object({ last: z.int() }),
  );
  return row!.last;
}
