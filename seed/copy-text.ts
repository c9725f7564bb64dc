import type { Table, Value } from './tables/row.ts';

const escapes: Record<string, string> = { '\\': '\\\\', '\t': '\\t', '\n': '\\n', '\r': '\\r' };
const special = /[\\\t\n\r]/g;
const escaped = (text: string) => (text.search(special) < 0 ? text : text.replace(special, (it) => escapes[it]!));
const element = (text: string) => `"${text.replace(/["\\]/g, '\\$&')}"`;

function field(value: Value | undefined): string {
  if (value === null || value === undefined) return '\\N';
  if (typeof value === 'string') return escaped(value);
  return typeof value === 'object' ? escaped(`{${value.map(element).join(',')}}`) : String(value);
}

/** Columns of a table, in the order of `copyText`. */
export const columnsOf = ({ name, rows }: Table): string[] => {
  if (!rows[0]) throw new Error(`table ${name} has no rows`);
  return Object.keys(rows[0]);
};

/** Rows in PostgreSQL's COPY text format. */
export function copyText(table: Table): string {
  const columns = columnsOf(table);
  return table.rows.map((row) => `${columns.map((column) => field(row[column])).join('\t')}\n`).join('');
}
