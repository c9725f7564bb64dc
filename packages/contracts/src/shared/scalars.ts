/** Shared pieces of the wire: identifiers, dates, codes, money, versions. */
import { z } from 'zod';
import { isCurrency } from './currency.ts';

export const Id = z.uuid();
export const IdParams = z.object({ id: Id });
export type IdParams = z.infer<typeof IdParams>;

/** A calendar day in the plant's zone, 2000-01-01 to 2099-12-31. */
export const Day = z.iso
  .date()
  .refine((day) => day >= '2000-01-01' && day < '2100-01-01', 'must lie between 2000-01-01 and 2099-12-31');
/** An instant, RFC 3339 with zone. */
export const Instant = z.iso
  .datetime({ offset: true })
  .refine((at) => at >= '2000' && at < '2100' && at[4] === '-', 'must lie between the years 2000 and 2099');

/** A short code people type and print on labels: letters, digits, `. _ / -`. */
export const Code = z
  .string()
  .trim()
  .min(1)
  .max(40)
  .regex(/^[\p{L}\p{N}][\p{L}\p{N} ._/-]*$/u, 'may hold letters, digits, blanks and . _ / -');
export const Name = z.string().trim().min(1).max(120);
export const Note = z.string().trim().max(10_000);
/** Lot, serial, station, customer reference and the like, as printed on the part or paper. */
export const Mark = z.string().trim().min(1).max(80);

export const Currency = z
  .string()
  .regex(/^[A-Z]{3}$/, 'must be a three-letter ISO 4217 code')
  .refine(isCurrency, 'must be a currency in use, by its ISO 4217 code');
/** Integer minor units (cents, for most currencies). */
export const MinorUnits = z.int().min(-1_000_000_000_000).max(1_000_000_000_000);
export const Money = z.object({ amountMinor: MinorUnits, currency: Currency });
export type Money = z.infer<typeof Money>;

export const Quantity = z.int().min(0).max(100_000_000);
export const Version = z.int().min(1);

export const TimeZone = z.string().refine((zone) => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return /^[A-Z]/.test(zone);
  } catch {
    return false;
  }
}, 'must be an IANA time zone such as Europe/Lisbon');

export const locales = ['en', 'de'] as const;
export const Locale = z.enum(locales);
export type Locale = z.infer<typeof Locale>;
export const papers = ['A4', 'Letter'] as const;
export const Paper = z.enum(papers);
export type Paper = z.infer<typeof Paper>;

/** A query value that may be given once, several times, or with commas: always an array afterwards. */
export const many = <Item extends z.ZodType>(item: Item) =>
  z.preprocess(
    (raw) =>
      raw === undefined
        ? undefined
        : (Array.isArray(raw) ? raw : [raw])
            .flatMap((part) => (typeof part === 'string' ? part.split(',') : [part]))
            .filter((part) => part !== ''),
    z.array(item).max(200),
  );

/** A query value that may be repeated and may itself hold commas: always an array afterwards. */
export const each = <Item extends z.ZodType>(item: Item) =>
  z.preprocess(
    (raw) => (raw === undefined ? undefined : (Array.isArray(raw) ? raw : [raw]).filter((part) => part !== '')),
    z.array(item).max(200),
  );
