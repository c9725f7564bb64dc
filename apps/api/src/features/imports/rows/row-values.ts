/** The row at hand, read field by field. Faults are collected, so that a person sees all of a row's faults at once. */
import { type FieldName, type ImportField, importFields, type Reference } from '#contracts/import-fields.ts';
import type { Mapping, RefusalCode } from '#contracts/imports.ts';
import { isCurrency } from '#contracts/shared/currency.ts';
import type { Cell } from '../formats/raw-row.ts';
import { type DateOrder, readDate } from '../interpret/date.ts';
import { decimalReader } from '../interpret/decimal.ts';
import { integerReader } from '../interpret/integer.ts';
import type { KnownValues } from '../interpret/known-values.ts';
import { amountReader } from '../interpret/money.ts';
import type { DecimalMark } from '../interpret/number.ts';
import { perPlant, type ReferenceRow } from '../interpret/references.ts';
import { type CellReader, Refusal, remembering } from '../interpret/refusal.ts';
import { partsOf, textReader } from '../interpret/text.ts';
import type { UnknownValues } from '../interpret/unknown-values.ts';

export interface Fault {
  field: FieldName | null;
  code: RefusalCode;
  value: string;
}
export interface Reading {
  kind: keyof typeof importFields;
  mapping: Mapping;
  dateOrder: Partial<Record<FieldName, DateOrder>>;
  decimalMark: Partial<Record<FieldName, DecimalMark>>;
  known: KnownValues;
  unknown: UnknownValues;
}

const longestMark = 80;
const longestNote = 10_000;
const mostParts = 200;
const mostTools = 20;
const mostRemembered = 50_000;

export class RowValues {
  readonly #reading: Reading;
  readonly #fields: Readonly<Record<string, ImportField>>;
  readonly #columns = new Map<FieldName, number>();
  readonly #readers = new Map<FieldName, CellReader>();
  readonly #found = new Map<string, Map<string, ReferenceRow | null | undefined>>();
  #cells: readonly Cell[] = [];
  faults: Fault[] = [];

  constructor(reading: Reading) {
    this.#reading = reading;
    this.#fields = importFields[reading.kind];
    for (const [column, field] of reading.mapping.columns.entries()) if (field) this.#columns.set(field, column);
    for (const field of Object.keys(this.#fields) as FieldName[]) this.#readers.set(field, this.#readerOf(field));
  }

  begin(cells: readonly Cell[]): void {
    this.#cells = cells;
    this.faults = [];
  }

  /** Whether the file says anything about the field at all. */
  has(field: FieldName): boolean {
    return this.#columns.has(field) || this.#reading.mapping.fixed[field] !== undefined;
  }

  refuse(field: FieldName | null, code: RefusalCode): null {
    this.faults.push({ field, code, value: field ? String(this.#cell(field)) : '' });
    return null;
  }

  /** Text as the database takes it; null for a blank cell, and for one that is refused. */
  value(field: FieldName): string | null {
    const cell = this.#cell(field);
    const value = cell === '' ? null : this.#readers.get(field)!(cell);
    if (value instanceof Refusal) {
      if (value.code === 'unknown_value') this.#reading.unknown.add(field, null, String(cell).trim());
      return this.refuse(field, value.code);
    }
    if (value === null && this.#fields[field]!.required) return this.refuse(field, 'missing');
    return value;
  }

  /** null: blank; undefined: refused. */
  reference(field: FieldName, plantId: string | null): ReferenceRow | null | undefined {
    const { of } = this.#fields[field] as { of: Reference };
    const text = this.text(field);
    const row = text === '' ? null : this.#find(field, of, plantId, text);
    if (row !== null || !this.#fields[field]!.required) return row;
    this.refuse(field, 'missing');
    return undefined;
  }

  references(field: FieldName, plantId: string | null): string[] {
    const { of } = this.#fields[field] as { of: Reference };
    const ids: string[] = [];
    for (const text of this.parts(field, mostTools)) {
      const row = this.#find(field, of, plantId, text);
      if (row && !ids.includes(row.id)) ids.push(row.id);
    }
    return ids;
  }

  /** Short texts that share a cell, each once. */
  parts(field: FieldName, most = mostParts): string[] {
    const text = this.#cell(field) === '' ? null : longText(this.#cell(field));
    if (text === null) return [];
    if (text instanceof Refusal) {
      this.refuse(field, text.code);
      return [];
    }
    const parts = partsOf(text);
    if (parts.length > most) this.refuse(field, 'too_many_values');
    else if (parts.some((part) => part.length > longestMark)) this.refuse(field, 'too_long');
    return parts;
  }

  /** Like `reference`, but a text that is unknown is not refused. */
  known(field: FieldName, of: Reference, plantId: string | null): ReferenceRow | null | undefined {
    return this.#lookUp(field, of, plantId, this.text(field));
  }

  unknown(field: FieldName, plantId: string | null, text = this.text(field)): undefined {
    this.#reading.unknown.add(field, plantId, text);
    this.refuse(field, 'unknown_value');
    return undefined;
  }

  text(field: FieldName): string {
    return String(this.#cell(field)).trim();
  }

  /** Columns repeat themselves, so what a text stands for is remembered for each field and plant. */
  #lookUp(field: FieldName, of: Reference, plantId: string | null, text: string): ReferenceRow | null | undefined {
    const key = perPlant.has(of) ? `${field}${plantId}` : field;
    const found = this.#found.get(key) ?? new Map<string, ReferenceRow | null | undefined>();
    if (found.has(text)) return found.get(text);
    if (found.size >= mostRemembered) found.clear();
    const row = this.#reading.known.reference(field, of, plantId, text);
    this.#found.set(key, found.set(text, row));
    return row;
  }

  #find(field: FieldName, of: Reference, plantId: string | null, text: string): ReferenceRow | null | undefined {
    const row = this.#lookUp(field, of, plantId, text);
    return row === undefined ? this.unknown(field, perPlant.has(of) ? plantId : null, text) : row;
  }

  /** A blank cell takes the fixed value, if one is given. */
  #cell(field: FieldName): Cell {
    const column = this.#columns.get(field);
    const cell = column === undefined ? '' : (this.#cells[column] ?? '');
    return typeof cell === 'string' && cell.trim() === '' ? (this.#reading.mapping.fixed[field] ?? '') : cell;
  }

  #readerOf(name: FieldName): CellReader {
    const field = this.#fields[name]!;
    const mark = this.#reading.decimalMark[name] ?? 'point';
    switch (field.type) {
      case 'day':
        return remembering(dayReader(this.#reading.dateOrder[name] ?? 'ymd'));
      case 'count':
        return remembering(integerReader(mark, field.min, field.max));
      case 'amount':
        return amountReader(mark);
      case 'decimal':
        return remembering(decimalReader(mark, field.min, field.max));
      case 'currency':
        return remembering((cell) =>
          isCurrency(String(cell).trim().toUpperCase())
            ? String(cell).trim().toUpperCase()
            : new Refusal('not_a_currency'),
        );
      case 'word':
        return remembering((cell) => {
          const word = this.#reading.known.word(name, field.of, String(cell).trim());
          return word === undefined ? new Refusal('unknown_value') : word;
        });
      default:
        return textReader(field.type === 'note' ? longestNote : longestMark);
    }
  }
}

const longText = textReader(longestNote);

/** Gives `2026-03-04`, or `2026-03-04T14:30:00` with an offset where the cell states one. */
const dayReader =
  (order: DateOrder): CellReader =>
  (cell) => {
    const reading = readDate(cell, order);
    if (reading === 'not_a_date') return new Refusal('not_a_date');
    if (reading === 'out_of_range') return new Refusal('year_out_of_range');
    return reading.time ? `${reading.day}T${reading.time.clock}${reading.time.offset ?? ''}` : reading.day;
  };
