/** Memory and progress of large files, as ratios: nothing here is timed. */
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { finished } from 'node:stream/promises';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { StageTask } from '#api/features/imports/run/stage-file.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'escape-ledger-large-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function writeList(rows: number): Promise<string> {
  const path = join(folder, `${rows}.csv`);
  const file = createWriteStream(path);
  file.write('Reference,Plant,Date found,Stage,Source,Qty,Note\n');
  for (let at = 0; at < rows; at += 1000) {
    const text = Array.from(
      { length: 1000 },
      (_, row) => `R-${at + row},ALFA,2026-05-13,EOL,line,${row % 3 === 0 ? 'many' : 2},"note ${at + row}, quoted"\n`,
    ).join('');
    if (!file.write(text)) await once(file, 'drain');
  }
  file.end();
  await finished(file);
  return path;
}

const taskFor = (path: string): StageTask => ({
  kind: 'failures',
  path,
  layout: { format: 'csv', encoding: 'utf-8', delimiter: ',' },
  headerLine: 1,
  headers: ['Reference', 'Plant', 'Date found', 'Stage', 'Source', 'Qty', 'Note'],
  mapping: {
    columns: ['externalRef', 'plant', 'foundOn', 'stage', 'source', 'quantityFound', 'note'],
    fixed: {},
    dateOrder: {},
    decimalMark: {},
    sameKey: null,
  },
  ways: null,
  references: [
    {
      of: 'plant',
      id: '0199f3a8-0000-7000-8000-000000000001',
      plantId: null,
      code: 'ALFA',
      name: 'Alfa',
      retired: false,
      common: null,
      currency: 'EUR',
      zone: 'UTC',
      safety: false,
    },
  ],
  meanings: [],
  rates: [],
  groupCurrency: 'EUR',
  today: [['0199f3a8-0000-7000-8000-000000000001', '2026-06-15']],
  locale: 'en',
  refusedPath: `${path}.refused.csv`,
});

/** Reads the file in the import's own thread, whose old space is limited to `megabytes`; resolves with its last message. */
const readWithin = (megabytes: number, path: string) =>
  new Promise<{ type: string; result?: { rows: number; refused: { rows: number } } }>((resolve, reject) => {
    const file = fileURLToPath(new URL('../../apps/api/src/features/imports/run/worker.ts', import.meta.url));
    const worker = new Worker(file, {
      workerData: taskFor(path),
      resourceLimits: { maxOldGenerationSizeMb: megabytes },
    });
    worker.on('message', (message) => {
      if (message.type === 'lines') worker.postMessage('more');
      else if (message.type === 'result') resolve(message);
    });
    worker.on('error', reject);
  });

test('a file of eight times the rows is read in the same memory, far too little to hold its rows', {
  timeout: 120_000,
}, async () => {
  const limit = 32;
  for (const rows of [25_000, 200_000]) {
    const { result } = await readWithin(limit, await writeList(rows));
    expect(result).toMatchObject({ rows, refused: { rows: Math.ceil(rows / 1000) * 334 } });
  }
});
