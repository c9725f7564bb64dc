/** One cell as read: text, or a number where the format itself stores numbers. Dates of a workbook arrive as ISO text. */
export type Cell = string | number;

/** `line` is the line of the text file on which the row begins, or the row number of the sheet. */
export interface RawRow {
  line: number;
  cells: Cell[];
  /** Set where the row could not be told apart from its neighbours; such a row is always refused. */
  fault?: 'quote';
}

/** Rows arrive in batches: a file of a million rows must not cost a million awaits. */
export type RowBatches = AsyncGenerator<RawRow[], void, undefined>;

export const maxColumns = 500;
export const maxCellLength = 100_000;

export const isBlank = (row: RawRow): boolean =>
  row.cells.every((cell) => cell === '' || (typeof cell === 'string' && cell.trim() === ''));
