import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { destroyEmbedded } from '#db/embedded.ts';
import { clone } from './support/app-process.ts';
import { processesNaming, until } from './support/processes.ts';

let temporary: string;
beforeEach(() => {
  temporary = mkdtempSync(join(tmpdir(), 'escape-ledger-fault-'));
  chmodSync(temporary, 0o755);
});
afterEach(() => rmSync(temporary, { recursive: true, force: true }));

async function holdServer(): Promise<{ run: ChildProcess; folder: string }> {
  const run = spawn(process.execPath, ['tests/faults/support/hold-test-server.ts'], {
    cwd: clone,
    env: { PATH: process.env.PATH, TMPDIR: temporary },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await once(run.stdout!, 'data');
  return { run, folder: join(temporary, `escape-ledger-test-${run.pid}`) };
}

async function kill(run: ChildProcess): Promise<void> {
  run.kill('SIGKILL');
  await once(run, 'close');
}

test('what a killed test run left behind is swept by the next one, which leaves a living run alone', async () => {
  const dead = await holdServer();
  const living = await holdServer();
  await kill(dead.run);
  expect(existsSync(dead.folder)).toBe(true);

  const sweeper = await holdServer();
  expect(existsSync(dead.folder)).toBe(false);
  expect(existsSync(living.folder)).toBe(true);

  await kill(living.run);
  await kill(sweeper.run);
  const last = await holdServer();
  expect(existsSync(living.folder)).toBe(false);
  expect(existsSync(sweeper.folder)).toBe(false);

  await kill(last.run);
  await destroyEmbedded(last.folder);
  await until('every server to be gone', () => processesNaming(temporary).length === 0);
});
