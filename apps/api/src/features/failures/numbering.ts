import { z } from 'zod';
import type { Tx } from '#db/client.ts';
import { sql, txOne } from '#db/sql.ts';

const Last = z.object({ last: z.int() });

/** A report's number for people: plant, year found, running number, such as `LIS-26-00042`. */
export const reportNumber = (plantCode: string, year: number, running: number): string =>
  `${plantCode}-${String(year % 100).padStart(2, '0')}-${String(running).padStart(5, '0')}`;

/**
 * Takes the next `count` running numbers of a plant and year and returns the first. The counter stays locked until the
 * transaction ends, so that no number is given twice and none is lost when it fails: take them as late as possible.
 */
export async function takeNumbers(tx: Tx, plantId: string, year: number, count = 1): Promise<number> {
  const row = await txOne(
    tx,
    sql`insert into report_counter as c (plant_id, year, last) values (${plantId}::uuid, ${year}, ${count})
      on conflict (plant_id, year) do update set last = c.last + excluded.last returning c.last`,
    Last,
  );
  return (row?.last ?? count) - count + 1;
}
