/** Workbooks for tests, made part by part, so that a test can also make one that no program would write. */
import { Zip, ZipDeflate } from 'fflate';

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

export function pack(parts: Record<string, string | Iterable<Uint8Array>>): Buffer {
  const chunks: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    chunks.push(chunk);
  });
  for (const [name, content] of Object.entries(parts)) {
    const file = new ZipDeflate(name, { level: 9 });
    zip.add(file);
    if (typeof content === 'string') file.push(Buffer.from(content), true);
    else {
      for (const piece of content) file.push(piece);
      file.push(new Uint8Array(0), true);
    }
  }
  zip.end();
  return Buffer.concat(chunks);
}

export const sheetXml = (rows: string): string =>
  `<?xml version="1.0"?><worksheet xmlns="${main}"><sheetData>${rows}</sheetData></worksheet>`;
export const text = (ref: string, value: string): string => `<c r="${ref}" t="inlineStr"><is><t>${value}</t></is></c>`;
export const shared = (ref: string, index: number): string => `<c r="${ref}" t="s"><v>${index}</v></c>`;
/** Style 1 shows a date. */
export const number = (ref: string, value: number, style = 0): string =>
  `<c r="${ref}" s="${style}"><v>${value}</v></c>`;

export function workbook(
  sheets: Record<string, string | Iterable<Uint8Array>>,
  { from1904 = false, strings = [] as string[] } = {},
): Buffer {
  const names = Object.keys(sheets);
  return pack({
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr date1904="${from1904 ? 1 : 0}"/><sheets>${names.map((name, at) => `<sheet name="${name}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`).join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${names.map((_, at) => `<Relationship Id="rId${at + 1}" Type="${office}/worksheet" Target="worksheets/sheet${at + 1}.xml"/>`).join('')}</Relationships>`,
    'xl/styles.xml': `<styleSheet xmlns="${main}"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`,
    'xl/sharedStrings.xml': `<sst xmlns="${main}">${strings.map((it) => `<si><t>${it}</t></si>`).join('')}</sst>`,
    ...Object.fromEntries(names.map((name, at) => [`xl/worksheets/sheet${at + 1}.xml`, sheets[name]!])),
  });
}
