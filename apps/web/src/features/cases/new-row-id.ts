/** Short enough to read in an address, long enough that two people do not make the same. */
export const newRowId = (): string => crypto.randomUUID().replaceAll('-', '').slice(0, 16);
