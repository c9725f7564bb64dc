import type { Format } from '#contracts/shared/format.ts';

/** A p-value after its letter: `= 0.03`. */
export const pIs = (p: number, format: Format): string => (p < 0.0001 ? pText(p, format) : `= ${pText(p, format)}`);

/** A p-value: nobody needs to know how small a very small one is. */
export const pText = (p: number, format: Format): string =>
  p < 0.0001 ? `< ${format.number(0.0001, { maximumFractionDigits: 4 })}` : format.significant(p, 2);

/** A fraction as terminals per million. */
export const perMillion = (share: number, format: Format): string =>
  share > 0 && share < 1e-8 ? `< ${format.number(0.01)}` : format.significant(share * 1e6, 2);
