import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import pdfmake from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces.js';

const fontFolder = join(dirname(createRequire(import.meta.url).resolve('pdfmake/package.json')), 'fonts/Roboto');
pdfmake.setFonts({
  Roboto: {
    normal: join(fontFolder, 'Roboto-Regular.ttf'),
    bold: join(fontFolder, 'Roboto-Medium.ttf'),
    italics: join(fontFolder, 'Roboto-Italic.ttf'),
    bolditalics: join(fontFolder, 'Roboto-MediumItalic.ttf'),
  },
});
// A document is made of what it is given: nothing is fetched, and no file but the fonts is read.
pdfmake.setUrlAccessPolicy(() => false);
pdfmake.setLocalAccessPolicy((path) => path.startsWith(fontFolder));

/** The PDF of a definition, with our fonts. */
export const makePdf = (definition: TDocumentDefinitions): Promise<Buffer> => pdfmake.createPdf(definition).getBuffer();
