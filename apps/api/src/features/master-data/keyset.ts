import { z } from 'zod';
import type { Order } from './kind.ts';

const parse = (key: string) =>
  key.startsWith('-') ? ({ field: key.slice(1), down: true } as const) : ({ field: key, down: false } as const);

const keysOf = (order: Order) => [...order, 'id'].map(parse);

const text = z
  .string()
  .max(200)
  .regex(/^[^\0]*$/);
/** What the columns hold that are not text. */
const types: Record<string, z.ZodType> = {
  id: z.uuid(),
  plantId: z.uuid(),
  position: z.int(),
  stage: z.int(),
  validFrom: z.iso.datetime().transform((at) => new Date(at)),
};

/** Reads the sort values of a cursor. */
export const cursorOf = (order: Order): z.ZodType<unknown[]> =>
  z.array(z.unknown()).pipe(z.tuple(keysOf(order).map(({ field }) => types[field] ?? text) as [z.ZodType]));

export const orderBy = (order: Order): object[] =>
  keysOf(order).map(({ field, down }) => ({ [field]: down ? 'desc' : 'asc' }));

/** The rows behind the one with these sort values: equal in the first keys, beyond it in the next. */
export const behind = (order: Order, values: readonly unknown[]): object => ({
  OR: keysOf(order).map(({ field, down }, place, keys) => ({
    ...Object.fromEntries(keys.slice(0, place).map((key, index) => [key.field, values[index]])),
    [field]: { [down ? 'lt' : 'gt']: values[place] },
  })),
});

/** Sort values of a stored row, as a cursor keeps them. */
export const sortValues = (order: Order, stored: Record<string, unknown>): (string | number)[] =>
  keysOf(order).map(({ field }) => {
    const value = stored[field];
    return value instanceof Date ? value.toISOString() : (value as string | number);
  });
