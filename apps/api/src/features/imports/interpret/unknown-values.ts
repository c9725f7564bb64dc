import type { FieldName } from '#contracts/import-fields.ts';
import type { UnknownValue } from '#contracts/imports.ts';
import { showable } from './text.ts';

const mostKept = 2000;
const longestShown = 200;

/** Collects the values that no one knows yet, with how many rows hold each. Keeps a bounded number of them. */
export class UnknownValues {
  readonly #rows = new Map<string, UnknownValue>();
  leftOut = 0;

  add(field: FieldName, plantId: string | null, raw: string): void {
    const key = `${field} ${plantId ?? ''} ${raw}`;
    const known = this.#rows.get(key);
    if (known) known.rows += 1;
    else if (this.#rows.size < mostKept)
      this.#rows.set(key, { field, plantId, raw: showable(raw).slice(0, longestShown), rows: 1 });
    else this.leftOut += 1;
  }

  /** Most frequent first. */
  list(): UnknownValue[] {
    return [...this.#rows.values()].sort((a, b) => b.rows - a.rows || a.raw.localeCompare(b.raw));
  }
}
