import { isDeepStrictEqual } from 'node:util';
import type { Fields, Kind, Row } from './kind.ts';

/** A stored value as JSON: 64-bit integers and decimals as numbers, the instant of retirement as text, other dates as days. */
function jsonValue(field: string, value: unknown): unknown {
  if (typeof value === 'bigint') return Number(value);
  if (value instanceof Date) return field === 'retiredAt' ? value.toISOString() : value.toISOString().slice(0, 10);
  if (typeof value === 'object' && value !== null && 'toNumber' in value)
    return (value as { toNumber(): number }).toNumber();
  return value;
}

const plain = (stored: Fields): Fields =>
  Object.fromEntries(Object.entries(stored).map(([field, value]) => [field, jsonValue(field, value)]));

export const toRow = (kind: Kind, stored: Fields): Fields => plain(kind.decode(stored));

export function toData(kind: Kind, input: Fields): Fields {
  const data = { ...kind.encode(input) };
  for (const day of kind.days) if (typeof data[day] === 'string') data[day] = new Date(data[day]);
  return data;
}

/** Whether the input says nothing that the row does not say already. */
export const sameAs = (row: Row, input: Fields): boolean =>
  Object.entries(input).every(([field, value]) => isDeepStrictEqual((row as unknown as Fields)[field], value));
