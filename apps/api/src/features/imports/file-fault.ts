import { importTerms } from '#contracts/import-terms.en.ts';
import type { fileFaultCodes } from '#contracts/imports.ts';

export type FileFaultCode = (typeof fileFaultCodes)[number];

/** Why a whole file cannot be read. `place` says where in the file, such as "line 12". */
export class FileFault extends Error {
  readonly code: FileFaultCode;
  readonly place: string | null;
  constructor(code: FileFaultCode, place: string | null = null) {
    super(place ? `${importTerms.trouble[code]} (${place})` : importTerms.trouble[code]);
    this.code = code;
    this.place = place;
  }
}
