import Papa from 'papaparse';

/** Between equals the first wins: a comma may be a decimal mark, the others hardly stand within values. */
export const delimiters = [';', '\t', '|', ','] as const;
export type Delimiter = string;

/** A first line `sep=;` names the delimiter, as spreadsheet programs write and read it. Common practice, no source. */
const declared = /^"?sep=(.)"?\r?\n/i;

export const declaredDelimiter = (head: string): Delimiter | null => declared.exec(head)?.[1] ?? null;

/**
 * The delimiter under which most rows have the same number of columns, more columns winning between equals.
 * `head` is the beginning of the text; its last row may be cut.
 */
export function detectDelimiter(head: string): Delimiter {
  const named = declaredDelimiter(head);
  if (named) return named;
  let best: Delimiter = ',';
  let bestScore = 0;
  for (const delimiter of delimiters) {
    const score = evenness(head, delimiter);
    if (score > bestScore) {
      best = delimiter;
      bestScore = score;
    }
  }
  return best;
}

function evenness(head: string, delimiter: Delimiter): number {
  const rows = new Papa.Parser({ delimiter, newline: lineBreak(head), preview: 200 }).parse(head, 0, false)
    .data as string[][];
  const filled = rows.filter((row) => row.some((cell) => cell.trim() !== ''));
  const widths = new Map<number, number>();
  for (const row of filled) if (row.length > 1) widths.set(row.length, (widths.get(row.length) ?? 0) + 1);
  let score = 0;
  for (const [width, count] of widths) score = Math.max(score, (count / filled.length) * (1 + Math.log2(width) / 4));
  return score;
}

/** Lines end with LF, or CR LF of which the reader drops the CR; CR alone only where there is no LF at all. */
export const lineBreak = (head: string): '\n' | '\r' => (!head.includes('\n') && head.includes('\r') ? '\r' : '\n');
