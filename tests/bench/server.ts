/** A server in a process of its own, listening on this machine only. */
import { type ChildProcess, spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:net';

export interface Server {
  url: string;
  /** resident memory, MB */
  memory(): Promise<number>;
  stop(): Promise<void>;
}

async function freePort(): Promise<number> {
  const probe = createServer();
  await new Promise<void>((ready) => probe.listen(0, '127.0.0.1', ready));
  const { port } = probe.address() as { port: number };
  await new Promise((closed) => probe.close(closed));
  return port;
}

async function answers(url: string, child: ChildProcess): Promise<void> {
  for (let tries = 0; tries < 600; tries++) {
    if (child.exitCode !== null) throw new Error(`The server ended with ${child.exitCode}`);
    const answer = await fetch(url).catch(() => null);
    if (answer?.ok) return;
    await new Promise((later) => setTimeout(later, 100));
  }
  throw new Error(`Nothing answers at ${url}`);
}

export async function startServer(script: string, environment: Record<string, string>): Promise<Server> {
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const child = spawn(process.execPath, [script], {
    env: { ...process.env, ...environment, PORT: String(port), HOST: '127.0.0.1' },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const ended = new Promise<void>((done) => child.once('exit', () => done()));
  await answers(`${url}/api/v1/health`, child);
  return {
    url,
    memory: () => memoryOf(child.pid!),
    async stop() {
      child.kill('SIGTERM');
      await ended;
    },
  };
}

/** Resident memory of a process in MB; Linux only, elsewhere NaN. */
export async function memoryOf(pid: number): Promise<number> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8').catch(() => '');
  return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? Number.NaN) / 1024;
}
