import { withClient } from './connect.ts';

const preparing = 470_004;

/** Runs `work` while no other process does the same on this database; whoever comes later waits. For first-start work. */
export async function alone<Result>(url: string, work: () => Promise<Result>): Promise<Result> {
  return withClient(url, async (client) => {
    await client.query('select pg_advisory_lock($1)', [preparing]);
    return work();
  });
}
