/** The yardstick of the routes: Fastify and pg alone, one SELECT and one INSERT, no permissions, checks or audit. */
import Fastify from 'fastify';
import pg from 'pg';
import { newId } from '#api/platform/ids.ts';

const pool = new pg.Pool({ connectionString: process.env.DATABASE_URL, max: 10 });
const app = Fastify();

app.get('/api/v1/health', async () => ({ status: 'ok' }));
app.get<{ Params: { id: string } }>('/failures/:id', async ({ params }) => {
  const { rows } = await pool.query({ name: 'read', text: 'select * from failure where id = $1', values: [params.id] });
  return rows[0];
});
app.post<{ Body: { plantId: string; foundOn: string; found: number } }>('/failures', async ({ body }) => {
  const id = newId();
  await pool.query({
    name: 'write',
    text: `insert into failure (id, plant_id, number, reported_at, found_on, found, source, quantity_found)
      values ($1, $2, $3, now(), $4, $5, 'line', 1)`,
    values: [id, body.plantId, id, body.foundOn, body.found],
  });
  return { id };
});
await app.listen({ host: process.env.HOST!, port: Number(process.env.PORT) });
process.once('SIGTERM', async () => {
  await app.close();
  await pool.end();
  process.exit(0);
});
