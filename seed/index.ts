/** npm run demo:load [-- --anchor=YYYY-MM-DD --seed=1]: the demo into an empty database, as the settings name it. */
import { parseArgs } from 'node:util';
import { readConfig } from '#api/config.ts';
import { loadDemoFor } from '#api/demo.ts';
import { startEmbedded } from '#db/embedded.ts';
import { migrate } from '#db/migrate.ts';
import { demoSignIn } from './sign-in.ts';

const say = (line: string) => process.stdout.write(`${line}\n`);

function readOptions(): { anchor?: string; seed?: number } {
  const { values } = parseArgs({ options: { anchor: { type: 'string' }, seed: { type: 'string' } } });
  const { anchor, seed } = values;
  if (anchor && !(/^20\d\d-\d\d-\d\d$/.test(anchor) && !Number.isNaN(Date.parse(anchor))))
    throw new Error(`--anchor is the last day of the demo, written as YYYY-MM-DD, not "${anchor}"`);
  if (seed && !/^\d{1,9}$/.test(seed)) throw new Error(`--seed is a whole number, not "${seed}"`);
  return { ...(anchor && { anchor }), ...(seed && { seed: Number(seed) }) };
}

async function run(): Promise<void> {
  const options = readOptions();
  const config = readConfig(process.env);
  const embedded = config.databaseUrl ? null : await startEmbedded({ dataDir: config.dataDir, log: say });
  try {
    const url = config.databaseUrl ?? embedded!.url;
    await migrate(url, say);
    await loadDemoFor(config, url, say, options);
    for (const text of demoSignIn) say(text);
  } finally {
    await embedded?.stop();
  }
}

run().catch((error: Error) => {
  console.error(`The demo cannot be loaded: ${error.message}`);
  process.exitCode = 1;
});
