/** The first reports of the bench once more, as a plant would send them: codes instead of ids, one line each, a new number. */

import { once } from 'node:events';
import { createReadStream, createWriteStream } from 'node:fs';
import { createInterface } from 'node:readline';
import type pg from 'pg';
import { newId } from '#api/platform/ids.ts';
import { stageOf } from '#contracts/taxonomy.ts';
import { reportColumns } from './rows.ts';

const columns = reportColumns.split(', ');
const at = (name: string) => columns.indexOf(name);
/** Field of the import, and where its value comes from in a line of COPY. */
const fields: [string, string, (value: string, codes: Map<string, string>) => string][] = [
  ['externalRef', 'number', (value) => `I-${value}`],
  ['plant', 'plant_id', (value, codes) => codes.get(value) ?? ''],
  ['foundOn', 'found_on', String],
  ['stage', 'found', (value) => stageOf(Number(value))],
  ['quantityFound', 'quantity_found', String],
  ['quantityInspected', 'quantity_inspected', String],
  ['source', 'source', String],
  ['line', 'line_id', (value, codes) => codes.get(value) ?? ''],
  ['station', 'station', String],
  ['shift', 'shift', String],
  ['housing', 'housing_id', (value, codes) => codes.get(value) ?? ''],
  ['terminal', 'terminal_id', (value, codes) => codes.get(value) ?? ''],
  ['wire', 'wire_id', (value, codes) => codes.get(value) ?? ''],
  ['tools', 'tool_id', (value, codes) => codes.get(value) ?? ''],
  ['cavities', 'cavities', (value) => value.slice(1, -1)],
  ['reelLot', 'reel_lot', String],
  ['housingLot', 'housing_lot', String],
  ['effect', 'effect', String],
  ['disposition', 'disposition', String],
  ['cause', 'cause', String],
  ['note', 'note', String],
];
export const importColumns = fields.map(([field]) => field);

export async function writeImportFile(
  client: pg.ClientBase,
  source: string,
  target: string,
  rows: number,
): Promise<void> {
  const { rows: named } = await client.query<{ id: string; code: string }>(
    ['plant', 'line', 'housing', 'terminal', 'wire', 'tool']
      .map((table) => `select id, code from ${table}`)
      .join(' union all '),
  );
  const codes = new Map(named.map(({ id, code }) => [id, code]));
  const file = createWriteStream(target);
  file.write(`${importColumns.join(';')}\n`);
  let left = rows;
  for await (const line of createInterface({ input: createReadStream(source) })) {
    if (left-- === 0) break;
    const values = line.split('\t');
    const cells = fields.map(([, column, of]) => {
      const value = values[at(column)]!;
      return value === '\\N' ? '' : of(value, codes);
    });
    if (!file.write(`${cells.join(';')}\n`)) await once(file, 'drain');
  }
  file.end();
  await once(file, 'close');
}

/** The first reports of a file under new ids and numbers, for COPY. */
export async function* firstLines(source: string, rows: number): AsyncGenerator<string> {
  let left = rows;
  for await (const line of createInterface({ input: createReadStream(source) })) {
    if (left-- === 0) return;
    const [, plant, number, ...rest] = line.split('\t');
    yield `${[newId(), plant, `C-${number}`, ...rest].join('\t')}\n`;
  }
}
