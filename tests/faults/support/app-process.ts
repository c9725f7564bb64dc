import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { setTimeout as delay } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

export const clone = fileURLToPath(new URL('../../../', import.meta.url));

interface Start {
  dataDir: string;
  port?: number;
  /** The clone to run; this one unless said otherwise. */
  folder?: string;
  /** Run as this user; only root may ask for it. */
  user?: { uid: number; gid: number };
  env?: Record<string, string>;
}

export interface App {
  child: ChildProcess;
  port: number;
  /** What it has printed so far, both streams together. */
  output(): string;
  signal(name: NodeJS.Signals): void;
  /** Resolves with its exit code once it has ended; null when a signal ended it. */
  ended: Promise<number | null>;
}

/** Every application of this test file that may still run; `endAll` belongs into afterEach. */
const started = new Set<App>();

/** Starts the real service as a process of its own and waits until it answers or ends. */
export async function startApp(start: Start): Promise<App> {
  const app = await launch(start);
  let over = false;
  void app.ended.then(() => {
    over = true;
  });
  const giveUp = Date.now() + 90_000;
  while (!over && !(await isHealthy(app.port))) {
    if (Date.now() > giveUp) throw new Error(`no answer and no end:\n${app.output()}`);
    await delay(50);
  }
  return app;
}

export async function launch({ dataDir, port, folder = clone, user, env }: Start): Promise<App> {
  const chosen = port ?? (await freePort());
  const child = spawn(process.execPath, ['apps/api/src/server.ts'], {
    cwd: folder,
    ...user,
    env: { PATH: process.env.PATH, PORT: String(chosen), DATA_DIR: dataDir, SEED: 'none', ...env },
  });
  return watch(child, chosen);
}

export function watch(child: ChildProcess, port: number): App {
  let text = '';
  child.stdout?.on('data', (chunk) => {
    text += chunk;
  });
  child.stderr?.on('data', (chunk) => {
    text += chunk;
  });
  const ended = once(child, 'close').then(([code]) => code as number | null);
  const app: App = { child, port, output: () => text, signal: (name) => void child.kill(name), ended };
  started.add(app);
  void ended.then(() => started.delete(app));
  return app;
}

export async function endAll(): Promise<void> {
  for (const app of [...started]) {
    app.signal('SIGKILL');
    await app.ended;
  }
}

export async function isHealthy(port: number): Promise<boolean> {
  try {
    const response = await fetch(`http://127.0.0.1:${port}/api/v1/health`);
    return response.ok && ((await response.json()) as { status: string }).status === 'ok';
  } catch {
    return false;
  }
}

export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  return typeof address === 'object' && address ? address.port : 0;
}
