/** Why a whole file cannot be read. Each is answered with a problem that says what to do. */
export const fileFaults = {
  empty: 'The file is empty. Choose a file that has a header row and at least one row below it.',
  not_text: 'The file is neither text nor an XLSX workbook. Save it as CSV or as XLSX and send that.',
  old_workbook:
    'This is a workbook in the old binary format, or one protected by a password. Save it without a password as XLSX or as CSV.',
  open_quote:
    'A quoted value is never closed, so the rows after it cannot be told apart. Close the quote and try again.',
  wide: 'A row has more than 500 columns. Choose the right delimiter, or remove the columns that are not needed.',
  long_value: 'A value is longer than 100,000 characters. Shorten it and try again.',
  broken_workbook:
    'The workbook is damaged or is not an XLSX workbook. Open it in a spreadsheet program and save it again as XLSX.',
  no_sheet: 'The workbook has no such sheet. Choose one of its sheets.',
  oversize_workbook:
    'The workbook unpacks to far more than a list of rows would. Save the sheet as CSV and send that instead.',
} as const;
export type FileFaultCode = keyof typeof fileFaults;

/** `place` says where in the file, such as "line 12". */
export class FileFault extends Error {
  readonly code: FileFaultCode;
  constructor(code: FileFaultCode, place?: string) {
    super(place ? `${fileFaults[code]} (${place})` : fileFaults[code]);
    this.code = code;
  }
}
