/** How PostgreSQL values reach our code. Held apart from pg's global parsers, which Prisma's adapter relies on. */
import pg from 'pg';

const oid = {
  int8: 20,
  date: 1082,
  timestamp: 1114,
  textArray: 1009,
  int8Array: 1016,
  timestampArray: 1115,
  dateArray: 1182,
  timestamptzArray: 1185,
  numericArray: 1231,
} as const;

/** A 64-bit integer as a number; an error where a number could not hold it exactly. */
export function safeInteger(value: string | bigint): number {
  const number = Number(value);
  if (!Number.isSafeInteger(number)) throw new RangeError(`integer ${value} is too large to be held exactly`);
  return number;
}

const text = (value: string) => value;
const timestampAsUtc = (value: string) => new Date(`${value.replace(' ', 'T')}Z`);
/** int8 → number when safe, numeric → string, date → 'YYYY-MM-DD', timestamp(tz) → Date; arrays alike. */
export const types = new pg.TypeOverrides();

/** The driver's reader of text[]: its elements are still text, or null. Its published type is wrong about the argument. */
type TextArrayParser = (value: string) => (string | null)[];
const textArray = types.getTypeParser(oid.textArray) as unknown as TextArrayParser;
const arrayOf =
  <Value>(parse: (value: string) => Value) =>
  (value: string): (Value | null)[] =>
    textArray(value).map((element) => (element === null ? null : parse(element)));

types.setTypeParser(oid.int8, safeInteger);
types.setTypeParser(oid.date, text);
types.setTypeParser(oid.timestamp, timestampAsUtc);
types.setTypeParser(oid.int8Array, arrayOf(safeInteger));
types.setTypeParser(oid.dateArray, arrayOf(text));
types.setTypeParser(oid.timestampArray, arrayOf(timestampAsUtc));
types.setTypeParser(
  oid.timestamptzArray,
  arrayOf((value) => new Date(value)),
);
types.setTypeParser(oid.numericArray, arrayOf(text));
