/** Days between 1900-01-00 as spreadsheets count (with a 29 February 1900 that never was) and 1970-01-01, and the same for 1904. */
const offset1900 = 25_569;
const offset1904 = 24_107;
const dayMs = 86_400_000;

/**
 * The calendar moment of a spreadsheet's serial number as ISO text without zone: `2026-03-04`, or `2026-03-04T14:30:00` where it
 * has a fraction. null before 1900-03-01, where the counts of programs differ, and after 9999. ECMA-376 part 1, 18.17.4.1.
 */
export function serialDate(serial: number, from1904: boolean): string | null {
  const days = serial - (from1904 ? offset1904 : offset1900);
  const at = new Date(Math.round((days * dayMs) / 1000) * 1000);
  if (Number.isNaN(at.getTime()) || at.getUTCFullYear() > 9999 || at.getTime() < Date.UTC(1900, 2, 1)) return null;
  const text = at.toISOString();
  return text.endsWith('T00:00:00.000Z') ? text.slice(0, 10) : text.slice(0, 19);
}
