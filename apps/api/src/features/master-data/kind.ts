import type { z } from 'zod';
import type { Unit } from '#api/platform/unit.ts';
import type { masterData } from '#contracts/master-data.ts';
import type { Tx } from '#db/client.ts';

export type Resource = (typeof masterData)[keyof typeof masterData];
export type Fields = Record<string, unknown>;
/** What every row of master data has, whatever its kind. */
export interface Row {
  id: string;
  version: number;
  retiredAt: string | null;
}

/** The part of a Prisma table that the core needs. */
export interface Table {
  findMany(query: object): Promise<Fields[]>;
  create(query: object): Promise<unknown>;
  updateMany(query: object): Promise<{ count: number }>;
}

/** Sort keys before `id`; a leading `-` sorts downwards. */
export type Order = readonly string[];

/** What one kind of master data adds to the common list, create, update and retire. */
interface Definition<Input, Shown> {
  table(tx: Tx): unknown;
  /** Name for the trail: a code, or what identifies the row. */
  label(row: Shown): string;
  order: Order;
  search?: readonly string[];
  /** Calendar days among the fields. */
  days?: readonly (keyof Input & string)[];
  /** Fields stored otherwise than sent. */
  encode?(input: Input): Fields;
  decode?(stored: Fields): Fields;
  /** Adds what lies in other tables. */
  complete?(tx: Tx, rows: Fields[]): Promise<Fields[]>;
  /** Throws a problem where the change may not be made. */
  check?(unit: Unit, input: Input, before: Shown | null): Promise<void>;
  /** What follows from the change, in its transaction. */
  saved?(unit: Unit, change: { before: Shown | null; after: Shown; input: Input | null }): Promise<void>;
}

export interface Kind extends Required<Pick<Definition<Fields, Row>, 'search' | 'days' | 'encode' | 'decode'>> {
  contract: Resource;
  table(tx: Tx): Table;
  label(row: Row): string;
  plantOf(row: Fields): string | null;
  order: Order;
  complete: NonNullable<Definition<Fields, Row>['complete']>;
  check: NonNullable<Definition<Fields, Row>['check']>;
  saved: NonNullable<Definition<Fields, Row>['saved']>;
}

/** States a kind with the types of its contract; the core sees all kinds alike. */
export function kind<R extends Resource>(
  contract: R,
  definition: Definition<z.output<R['Input']>, z.output<R['Row']>>,
): Kind {
  const column = contract.scope === 'group' ? null : contract.name === 'plants' ? 'id' : 'plantId';
  return {
    search: [],
    days: [],
    encode: (input: Fields) => input,
    decode: (stored: Fields) => stored,
    complete: async (_tx: Tx, rows: Fields[]) => rows,
    check: async () => {},
    saved: async () => {},
    plantOf: (row: Fields) => (column === null ? null : (row[column] as string)),
    ...definition,
    contract,
  } as Kind;
}
