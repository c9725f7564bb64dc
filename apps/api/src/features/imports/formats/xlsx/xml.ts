import { StringDecoder } from 'node:string_decoder';
import { SaxesParser } from 'saxes';
import { FileFault } from '../../file-fault.ts';

export interface XmlHandler {
  open(name: string, attributes: Record<string, string>): void;
  text?(text: string): void;
  close?(name: string): void;
}

/**
 * Feeds a part to a handler, one piece at a time; yields after each piece so that the caller can pass on what has come together.
 * Names come without their namespace prefix. A document type, and with it every entity of its own, is refused.
 */
export async function* parseXml(pieces: AsyncIterable<Buffer>, handler: XmlHandler): AsyncGenerator<void> {
  const parser = new SaxesParser({ fragment: false, position: false });
  parser.on('error', () => {
    throw new FileFault('broken_workbook');
  });
  parser.on('doctype', () => {
    throw new FileFault('broken_workbook');
  });
  parser.on('opentag', (tag) => handler.open(local(tag.name), tag.attributes as Record<string, string>));
  if (handler.text) parser.on('text', (text) => handler.text?.(text));
  if (handler.close) parser.on('closetag', (tag) => handler.close?.(local(tag.name)));
  const decoder = new StringDecoder('utf8');
  for await (const piece of pieces) {
    parser.write(decoder.write(piece));
    yield;
  }
  parser.write(decoder.end());
  parser.close();
  yield;
}

/** Reads a small part to its end. */
export async function readXml(pieces: AsyncIterable<Buffer>, handler: XmlHandler): Promise<void> {
  for await (const _ of parseXml(pieces, handler));
}

function local(name: string): string {
  const colon = name.indexOf(':');
  return colon < 0 ? name : name.slice(colon + 1);
}
