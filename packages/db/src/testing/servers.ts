import { readdir } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isAlive } from '../embedded/process.ts';
import { destroyEmbedded, startEmbedded } from '../embedded.ts';

export interface TestServer {
  url: string;
  stop(): Promise<void>;
}

export async function startServer(): Promise<TestServer> {
  const { TEST_DATABASE_URL: url, TEST_DATABASE: kind = 'embedded' } = process.env;
  if (url) return { url, stop: async () => {} };
  if (kind === 'container') return startContainer();
  if (kind === 'embedded') return startTemporary();
  throw new Error(`TEST_DATABASE is "${kind}"; it may be "container" or "embedded"`);
}

async function startContainer(): Promise<TestServer> {
  const { PostgreSqlContainer } = await import('@testcontainers/postgresql');
  const container = await new PostgreSqlContainer(process.env.TEST_DATABASE_IMAGE ?? 'postgres:18').start();
  return { url: container.getConnectionUri(), stop: async () => void (await container.stop()) };
}

const prefix = 'escape-ledger-test-';

/** Nothing here outlives the run, so nothing is flushed to disk. */
const fastAndLoose = { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off', shared_buffers: '128MB' };

async function startTemporary(): Promise<TestServer> {
  await sweepDeadRuns();
  const dataDir = join(tmpdir(), `${prefix}${process.pid}`);
  await destroyEmbedded(dataDir);
  const { url, stop } = await startEmbedded({ dataDir, log: () => {}, settings: fastAndLoose });
  return {
    url,
    async stop() {
      await stop();
      await destroyEmbedded(dataDir);
    },
  };
}

/** Runs that were killed leave their server and its folder behind. Those of other users are theirs to sweep. */
async function sweepDeadRuns(): Promise<void> {
  for (const entry of await readdir(tmpdir())) {
    if (!entry.startsWith(prefix) || isAlive(Number(entry.slice(prefix.length)))) continue;
    await destroyEmbedded(join(tmpdir(), entry)).catch(() => {});
  }
}
