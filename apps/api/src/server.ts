import type { FastifyInstance } from 'fastify';
import { alone } from '#db/alone.ts';
import { openDatabase } from '#db/client.ts';
import { startEmbedded } from '#db/embedded.ts';
import { migrate } from '#db/migrate.ts';
import { buildApp } from './app.ts';
import { readConfig } from './config.ts';
import { prepareFirstStart } from './first-start.ts';
import { jobs } from './jobs.ts';
import { startJobs } from './platform/jobs/start.ts';

const say = (line: string) => process.stdout.write(`${line}\n`);

let stopping = false;

async function start(): Promise<void> {
  const config = readConfig(process.env);
  const embedded = config.databaseUrl ? null : startEmbedded({ dataDir: config.dataDir, log: say });
  let app: FastifyInstance | undefined;
  let stopJobs: (() => Promise<void>) | undefined;
  const close = async () => {
    await stopJobs?.();
    await app?.close();
    await (await embedded)?.stop();
  };
  stopOnSignal(close);
  try {
    const url = config.databaseUrl ?? (await embedded!).url;
    const { db, signIn } = await alone(url, async () => {
      await migrate(url, say);
      const db = await openDatabase(url, {
        onError: (error) => console.error(`A database connection broke: ${error.message}`),
      });
      return { db, signIn: await prepareFirstStart({ config, db, url, log: say }) };
    });
    app = await buildApp({ config, db, clock: () => new Date() });
    app.addHook('onClose', () => db.close());
    stopJobs = await startJobs(app, url, jobs);
    const address = await app.listen({ port: config.port, host: config.host });
    say(`\nEscape Ledger is ready at ${address.replace('127.0.0.1', 'localhost')}`);
    for (const line of signIn) say(line);
    say('Stop it with Ctrl-C.');
  } catch (error) {
    if (stopping) return;
    stopping = true;
    await close().catch(() => {});
    throw error;
  }
}

/** From the first moment on, so that Ctrl-C during a long first start leaves nothing running either. */
function stopOnSignal(close: () => Promise<void>): void {
  const stop = async () => {
    if (stopping) return;
    stopping = true;
    say('Stopping …');
    await close().catch((error) => console.error(explain(error)));
    process.exit(0);
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
}

/** Start-up errors are one line that says what to do. */
function explain(error: NodeJS.ErrnoException): string {
  if (error.code === 'EADDRINUSE')
    return `Port ${process.env.PORT ?? 4700} is taken. Stop what uses it, or choose another: PORT=4701 npm start`;
  if (error.code === 'EACCES' && error.syscall === 'listen')
    return `Port ${process.env.PORT} may not be used by this account. Choose one above 1024: PORT=4700 npm start`;
  return error.message;
}

start().catch((error) => {
  console.error(`Escape Ledger cannot start: ${explain(error)}`);
  process.exit(1);
});
