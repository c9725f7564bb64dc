/** What an import job keeps between requests, as its JSON columns hold it. */
import { z } from 'zod';
import {
  Column,
  dateOrders,
  decimalMarks,
  Field,
  Layout,
  Mapping,
  Outcome,
  Question,
  Trouble,
  UnknownValue,
} from '#contracts/imports.ts';

export const StoredFile = z.object({
  layout: Layout,
  headerLine: z.int(),
  firstLines: z.array(z.object({ line: z.int(), cells: z.array(z.string()) })),
  columns: z.array(Column),
});
export type StoredFile = z.output<typeof StoredFile>;

export const StoredResult = z.object({
  questions: z.array(Question).default([]),
  unknown: z.array(UnknownValue).default([]),
  unknownLeftOut: z.int().default(0),
  /** How the columns are read; null until all values were looked at. */
  ways: z
    .object({
      dateOrder: z.partialRecord(Field, z.enum(dateOrders)),
      decimalMark: z.partialRecord(Field, z.enum(decimalMarks)),
    })
    .nullable()
    .default(null),
  outcome: Outcome.nullable().default(null),
  trouble: Trouble.nullable().default(null),
});
export type StoredResult = z.output<typeof StoredResult>;
export const nothingYet: StoredResult = {
  questions: [],
  unknown: [],
  unknownLeftOut: 0,
  ways: null,
  outcome: null,
  trouble: null,
};

/** Kept for the next file of the same source, by the folded headers of its columns. */
export const SavedMapping = Mapping.omit({ columns: true }).extend({ fieldOf: z.record(z.string(), Field.nullable()) });
export type SavedMapping = z.output<typeof SavedMapping>;
