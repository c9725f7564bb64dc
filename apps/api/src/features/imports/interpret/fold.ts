/** The same word in upper or lower case, with or without accents, blanks and signs: `Wackel-Kontakt` = `wackelkontakt`, `Gehäuse` = `GEHAEUSE`. */
export const fold = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .replaceAll('ß', 'ss')
    .replace(/([aou])e/g, '$1')
    .replace(/[^\p{L}\p{N}]/gu, '');

/** A code as people type it: blanks at the ends and letter case do not count, signs do. */
export const foldCode = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();
