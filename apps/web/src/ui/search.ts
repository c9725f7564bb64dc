/** Filters live in the address: plain repeated keys, the same words as the API's query string. */
import type { z } from 'zod';
import { queryString } from './http.ts';

export const parseSearch = (text: string): Record<string, string | string[]> => {
  const found: Record<string, string | string[]> = {};
  for (const key of new Set(new URLSearchParams(text).keys())) {
    const values = new URLSearchParams(text).getAll(key);
    found[key] = values.length === 1 ? (values[0] ?? '') : values;
  }
  return found;
};

export const stringifySearch = (search: Record<string, unknown>): string => queryString(search);

const asText = (value: unknown): unknown =>
  typeof value === 'boolean' || typeof value === 'number' ? String(value) : value;

/**
 * Reads the address by a schema, key by key: what the schema does not know or refuses is dropped,
 * so that an old or mistyped link still opens its page.
 */
export const searchOf =
  <Shape extends z.ZodRawShape>(schema: z.ZodObject<Shape>) =>
  (raw: Record<string, unknown>): Partial<z.output<z.ZodObject<Shape>>> => {
    // The router lays this over the raw address: only a key set to undefined is gone.
    const kept: Record<string, unknown> = Object.fromEntries(Object.keys(raw).map((key) => [key, undefined]));
    for (const [key, part] of Object.entries(schema.shape)) {
      if (raw[key] === undefined || raw[key] === '') continue;
      const read = (part as z.ZodType).safeParse(asText(raw[key]));
      if (read.success && read.data !== undefined) kept[key] = read.data;
    }
    return kept as Partial<z.output<z.ZodObject<Shape>>>;
  };
