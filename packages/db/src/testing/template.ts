import { createHash } from 'node:crypto';
import { withClient } from '../connect.ts';
import { migrate } from '../migrate.ts';
import { readMigrations } from '../migration-files.ts';

const prefix = 'escape_ledger_template_';
const building = 470_003;

/** The migrated template for the migrations as they are now; made once per server and set of migrations. */
export async function ensureTemplate(serverUrl: string): Promise<string> {
  const migrations = await readMigrations();
  const hash = createHash('sha256');
  for (const { name, checksum } of migrations) hash.update(`${name} ${checksum}\n`);
  const template = prefix + hash.digest('hex').slice(0, 16);
  await withClient(serverUrl, async (client) => {
    await client.query('select pg_advisory_lock($1)', [building]);
    const { rowCount } = await client.query('select from pg_database where datname = $1', [template]);
    if (rowCount) return;
    const draft = `${template}_draft`;
    await client.query(`drop database if exists ${draft}`);
    await client.query(`create database ${draft}`);
    const url = new URL(serverUrl);
    url.pathname = `/${draft}`;
    await migrate(url.href);
    await client.query(`alter database ${draft} rename to ${template}`);
  });
  return template;
}

/** On a server that outlives the run: drops copies that killed runs left more than six hours ago and nobody uses. */
export async function sweepOldCopies(serverUrl: string): Promise<void> {
  await withClient(serverUrl, async (client) => {
    const { rows } = await client.query<{ name: string }>(`
      select d.datname as name from pg_database d
      where d.datname ~ '^escape_ledger_test_[0-9]+_'
        and split_part(d.datname, '_', 4)::bigint < extract(epoch from now() - interval '6 hours')
        and not exists (select from pg_stat_activity a where a.datname = d.datname)`);
    for (const { name } of rows) await client.query(`drop database if exists ${name}`);
  });
}
