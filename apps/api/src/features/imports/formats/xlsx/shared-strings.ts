import { FileFault } from '../../file-fault.ts';
import type { Archive } from './archive.ts';
import { parseXml } from './xml.ts';

/** All texts of a workbook as bytes, because a million JavaScript strings would take several times as much memory. */
export interface SharedStrings {
  at(index: number): string;
}

const part = 'xl/sharedStrings.xml';
const maxBytes = 256 * 1024 ** 2;

export async function readSharedStrings(archive: Archive): Promise<SharedStrings> {
  if (!archive.has(part)) return { at: () => '' };
  let bytes = Buffer.allocUnsafe(64 * 1024);
  let ends = new Uint32Array(4096);
  let used = 0;
  let count = 0;
  const add = (text: string) => {
    const needed = used + Buffer.byteLength(text);
    if (needed > maxBytes) throw new FileFault('oversize_workbook');
    if (needed > bytes.length) bytes = Buffer.concat([bytes], Math.max(needed, bytes.length * 2));
    if (count === ends.length) {
      const wider = new Uint32Array(ends.length * 2);
      wider.set(ends);
      ends = wider;
    }
    used += bytes.write(text, used);
    ends[count] = used;
    count += 1;
  };
  const text = new RichText();
  for await (const _ of parseXml(archive.read(part), {
    open: (name) => text.open(name),
    text: (piece) => text.piece(piece),
    close: (name) => {
      if (name === 'si') add(text.take());
      else text.close(name);
    },
  }));
  return {
    at(index) {
      if (!(index >= 0 && index < count)) throw new FileFault('broken_workbook');
      return bytes.toString('utf8', index === 0 ? 0 : ends[index - 1], ends[index]);
    },
  };
}

/** Joins the runs of a text; the reading aids above East Asian characters (`rPh`) are left out. */
export class RichText {
  #text = '';
  #inText = false;
  #inAid = false;
  open(name: string): void {
    if (name === 'rPh') this.#inAid = true;
    else if (name === 't') this.#inText = !this.#inAid;
  }
  piece(piece: string): void {
    if (this.#inText) this.#text += piece;
  }
  close(name: string): void {
    if (name === 't') this.#inText = false;
    else if (name === 'rPh') this.#inAid = false;
  }
  take(): string {
    const text = withoutEscapes(this.#text);
    this.#text = '';
    return text;
  }
}

/** `_x000D_` stands for a control character (ECMA-376 part 1, 22.9.2.19, ST_Xstring). */
const withoutEscapes = (text: string): string =>
  text.includes('_x')
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    : text;
