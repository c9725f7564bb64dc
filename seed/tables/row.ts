export type Value = string | number | boolean | null | readonly string[];
/** Column names as in the database. */
export type Row = Record<string, Value>;
/** Rows of one table; every row has the columns of the first. */
export interface Table {
  name: string;
  rows: Row[];
}
/** An instant as PostgreSQL reads it. */
export const instant = (unixMs: number): string => new Date(unixMs).toISOString();
