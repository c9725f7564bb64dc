import { hash } from 'node:crypto';
import { UUID } from 'uuidv7';

export type MakeId = (key: string, unixMs?: number) => string;

/** UUID version 7 whose time is the row's and whose other bits come from its key: the same row always gets the same id. */
export function idMaker(seed: number, defaultUnixMs: number): MakeId {
  return (key, unixMs = defaultUnixMs) => {
    const bytes = hash('sha256', `${seed} ${key}`, 'buffer');
    const bits30 = bytes.readUInt32BE(2) >>> 2;
    return UUID.fromFieldsV7(unixMs, bytes.readUInt16BE(0) >>> 4, bits30, bytes.readUInt32BE(6)).toString();
  };
}
