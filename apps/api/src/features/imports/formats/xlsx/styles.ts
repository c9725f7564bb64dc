import type { Archive } from './archive.ts';
import { readXml } from './xml.ts';

/** Whether the cell style of that index shows a number as a date. */
export type DateStyles = (style: number) => boolean;

const part = 'xl/styles.xml';

/** Built-in date formats (ECMA-376 part 1, 18.8.30): 14 to 22 and 45 to 47, and the East Asian 27 to 36 and 50 to 58. */
const isBuiltInDate = (id: number): boolean =>
  (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);

export async function readDateStyles(archive: Archive): Promise<DateStyles> {
  if (!archive.has(part)) return () => false;
  const custom = new Map<number, boolean>();
  const styles: boolean[] = [];
  let inCells = false;
  await readXml(archive.read(part), {
    open(name, attributes) {
      if (name === 'numFmt') custom.set(Number(attributes.numFmtId), isDateFormat(attributes.formatCode ?? ''));
      else if (name === 'cellXfs') inCells = true;
      else if (name === 'xf' && inCells) {
        const id = Number(attributes.numFmtId ?? 0);
        styles.push(custom.get(id) ?? isBuiltInDate(id));
      }
    },
    close(name) {
      if (name === 'cellXfs') inCells = false;
    },
  });
  return (style) => styles[style] ?? false;
}

/** A format code shows a date when a day, month or year letter is left once quoted text, escapes and bracketed parts are gone. */
export function isDateFormat(code: string): boolean {
  const bare = (code.split(';')[0] ?? '').replace(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]/g, '');
  return /[dy]/i.test(bare) || (/m/i.test(bare.replace(/general/gi, '')) && !/[hs0#]/i.test(bare));
}
