/** Rows in the text format of PostgreSQL's COPY (documentation, COPY, "Text Format"). */
export type CopyValue = string | number | boolean | readonly (string | number)[] | null;

const special = /[\\\t\n\r]/;
const escapes: Record<string, string> = { '\\': '\\\\', '\t': '\\t', '\n': '\\n', '\r': '\\r' };

const escaped = (text: string): string =>
  special.test(text) ? text.replace(/[\\\t\n\r]/g, (sign) => escapes[sign]!) : text;

function arrayText(values: readonly (string | number)[]): string {
  return `{${values.map((value) => (typeof value === 'number' ? value : `"${value.replace(/[\\"]/g, '\\$&')}"`)).join(',')}}`;
}

/** One line without its end. null is `\N`. */
export function copyLine(values: readonly CopyValue[]): string {
  let line = '';
  for (let at = 0; at < values.length; at += 1) {
    const value = values[at]!;
    if (at > 0) line += '\t';
    if (value === null) line += '\\N';
    else if (typeof value === 'string') line += escaped(value);
    else line += typeof value === 'object' ? escaped(arrayText(value)) : String(value);
  }
  return line;
}
