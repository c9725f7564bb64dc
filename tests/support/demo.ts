/** The demo in a database of its own, up to a fixed day, asked through the service and through SQL. */
import { z } from 'zod';
import { loadDemoFor } from '#api/demo.ts';
import { queryRows, sql } from '#db/sql.ts';
import { dayNumber, isoDay } from '#seed/calendar.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';

/** A Sunday: Monday's weeks end on it. */
export const anchor = '2026-06-14';
export const now = '2026-06-15T18:00:00Z';
/** The day that lies `days` before the anchor. */
export const daysBefore = (days: number): string => isoDay(dayNumber(anchor) - days);

const Named = z.object({ key: z.string(), id: z.string() });

export interface Demo extends TestApp {
  viewer: Asker;
  /** id by `plant QRO`, `line QRO L2`, `tool POZ AP-150-2`, `housing HX-13` … */
  id(key: string): string;
  /** An analysis with these filters. */
  // biome-ignore lint/suspicious/noExplicitAny: a test states what it expects of the body
  ask(analysis: string, query: Record<string, string | number>): Promise<any>;
}

export async function createDemoApp(): Promise<Demo> {
  const app = await createTestApp({ now });
  await loadDemoFor(app.app.config, app.app.config.databaseUrl!, () => {}, { anchor, seed: 1, now: new Date(now) });
  const rows = await queryRows(
    app.db.pool,
    sql`select 'plant ' || p.code as key, p.id from plant p
      union all select 'line ' || p.code || ' ' || l.code, l.id from line l join plant p on p.id = l.plant_id
      union all select 'tool ' || p.code || ' ' || t.code, t.id from tool t join plant p on p.id = t.plant_id
      union all select 'housing ' || h.code, h.id from housing h
      union all select 'terminal ' || t.code, t.id from terminal t
      union all select 'customer ' || c.code, c.id from customer c`,
    Named,
  );
  const ids = new Map(rows.map(({ key, id }) => [key, id]));
  const viewer = await app.as('viewer');
  return {
    ...app,
    viewer,
    id(key) {
      const id = ids.get(key);
      if (!id) throw new Error(`the demo has no ${key}`);
      return id;
    },
    async ask(analysis, query) {
      const address = new URLSearchParams(Object.entries(query).map(([name, value]) => [name, String(value)]));
      const { status, body } = await viewer.get(`/api/v1/${analysis}?${address}`);
      if (status !== 200) throw new Error(`${analysis}: ${JSON.stringify(body)}`);
      return body;
    },
  };
}
