import { FileFault } from '../../file-fault.ts';
import type { Archive } from './archive.ts';
import { readXml } from './xml.ts';

export interface Workbook {
  /** Days are counted from 1904 instead of 1900. */
  from1904: boolean;
  /** Visible sheets in their order, each with the part that holds it. */
  sheets: { name: string; part: string }[];
}

const part = 'xl/workbook.xml';
const links = 'xl/_rels/workbook.xml.rels';

export async function readWorkbook(archive: Archive): Promise<Workbook> {
  if (!archive.has(part)) throw new FileFault('broken_workbook');
  const targets = new Map<string, string>();
  if (archive.has(links))
    await readXml(archive.read(links), {
      open(name, { Id, Target }) {
        if (name === 'Relationship' && Id && Target)
          targets.set(Id, Target.startsWith('/') ? Target.slice(1) : `xl/${Target}`);
      },
    });
  let from1904 = false;
  const sheets: Workbook['sheets'] = [];
  await readXml(archive.read(part), {
    open(name, attributes) {
      if (name === 'workbookPr') from1904 = attributes.date1904 === '1' || attributes.date1904 === 'true';
      if (name !== 'sheet' || (attributes.state ?? 'visible') !== 'visible') return;
      const sheet = targets.get(attributes['r:id'] ?? '');
      if (sheet && attributes.name) sheets.push({ name: attributes.name, part: sheet });
    },
  });
  if (sheets.length === 0) throw new FileFault('no_sheet');
  return { from1904, sheets };
}
