import { z } from 'zod';
import type { Database } from '#db/client.ts';
import { empty, queryRows, raw, sql } from '#db/sql.ts';

const columns = {
  station: raw('f.station'),
  shift: raw('f.shift'),
  reelLot: raw('f.reel_lot'),
  housingLot: raw('f.housing_lot'),
  fixturePosition: raw('f.fixture_position'),
};
interface Question {
  plantId: string;
  lineId?: string | undefined;
  field: keyof typeof columns;
  q?: string | undefined;
}

/** Marks of the plant's last 2,000 reports, the most used first. */
export async function recentMarks(db: Database, { plantId, lineId, field, q }: Question): Promise<string[]> {
  const beginning = q ? sql`and starts_with(lower(m.mark), ${q.toLowerCase()})` : empty;
  const rows = await queryRows(
    db.pool,
    sql`select m.mark from (
        select ${columns[field]} as mark from failure f
        where f.plant_id = ${plantId}::uuid and f.voided_at is null
          ${lineId ? sql`and f.line_id = ${lineId}::uuid` : empty}
        order by f.found_on desc, f.id desc limit 2000) m
      where m.mark is not null ${beginning}
      group by m.mark order by count(*) desc, m.mark limit 20`,
    z.object({ mark: z.string() }),
  );
  return rows.map(({ mark }) => mark);
}
