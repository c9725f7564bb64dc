import { hash } from 'node:crypto';
import { UUID } from 'uuidv7';

/** Of a row that has an instant, give it; master data all begin with the demo. */
export type MakeId = (key: string, unixMs?: number) => string;

/** UUID version 7 whose time is the row's and whose other bits come from its key: the same row always gets the same id. */
export function idMaker(seed: number, begin: number): MakeId {
  const known = new Map<string, string>();
  return (key, unixMs) => {
    if (unixMs !== undefined) return idOf(`${seed} ${key}`, unixMs);
    const id = known.get(key) ?? idOf(`${seed} ${key}`, begin);
    known.set(key, id);
    return id;
  };
}

function idOf(key: string, unixMs: number): string {
  const bytes = hash('sha256', key, 'buffer');
  return UUID.fromFieldsV7(
    unixMs,
    bytes.readUInt16BE(0) >>> 4,
    bytes.readUInt32BE(2) >>> 2,
    bytes.readUInt32BE(6),
  ).toString();
}
