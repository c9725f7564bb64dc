/** What a cell of an exported table holds. A day is written as a date where the format knows dates. */
export type Cell = string | number | null | { day: string };
export type Row = readonly Cell[];

/**
 * Text that no spreadsheet program takes for a formula: one that begins like a formula gets an apostrophe in front
 * (common practice, no source). Numbers are written as numbers and need none.
 */
export const harmless = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);
