/** Databases for tests: one migrated template per run, a copy of it per test file. */
import { randomBytes } from 'node:crypto';
import { withClient } from './connect.ts';
import { startServer, type TestServer } from './testing/servers.ts';
import { ensureTemplate, sweepOldCopies } from './testing/template.ts';

/** Worker processes inherit these from the process that started the server. */
const serverVariable = 'ESCAPE_LEDGER_TEST_SERVER';
const templateVariable = 'ESCAPE_LEDGER_TEST_TEMPLATE';

/**
 * Starts the server that this run's test databases live on. Called once per run; a second call joins the first.
 * Order: TEST_DATABASE_URL, a container where TEST_DATABASE=container asks for one, else the built-in PostgreSQL in a temporary folder.
 */
export async function startTestServer(): Promise<TestServer> {
  const running = process.env[serverVariable];
  if (running) return { url: running, stop: async () => {} };
  const server = await startServer();
  try {
    await sweepOldCopies(server.url);
    process.env[templateVariable] = await ensureTemplate(server.url);
    process.env[serverVariable] = server.url;
  } catch (error) {
    await server.stop();
    throw error;
  }
  return {
    url: server.url,
    async stop() {
      delete process.env[serverVariable];
      await server.stop();
    },
  };
}

export interface TestDatabase {
  url: string;
  drop(): Promise<void>;
}

/** A migrated, empty database of its own. Drop it when the file is done. */
export async function createTestDatabase(): Promise<TestDatabase> {
  const server = process.env[serverVariable];
  const template = process.env[templateVariable];
  if (!server || !template)
    throw new Error('No test server is running: call startTestServer() in a global setup first');
  const name = `escape_ledger_test_${Math.floor(Date.now() / 1000)}_${randomBytes(6).toString('hex')}`;
  await withClient(server, (client) => client.query(`create database ${name} template ${template}`));
  const url = new URL(server);
  url.pathname = `/${name}`;
  return {
    url: url.href,
    drop: () => withClient(server, async (client) => void (await client.query(`drop database ${name} with (force)`))),
  };
}
