/** Master data by what people call it. Loaded once per run; its size does not depend on the file. */
import type { Reference } from '#contracts/import-fields.ts';
import { foldCode } from './fold.ts';

export interface ReferenceRow {
  of: Reference;
  id: string;
  /** Set for what belongs to one plant: lines, stages, tools. */
  plantId: string | null;
  code: string;
  name: string;
  retired: boolean;
  /** Stage: its common stage, 1 to 10. */
  common: number | null;
  /** Plant: its currency and zone. */
  currency: string | null;
  zone: string | null;
  /** Housing: safety-relevant. */
  safety: boolean;
}

export const perPlant: ReadonlySet<Reference> = new Set(['line', 'stage', 'tool']);

export interface ReferenceIndex {
  /** The row that a code or, where nothing has that code, a name stands for. A name that several rows share stands for none. */
  find(of: Reference, plantId: string | null, text: string): ReferenceRow | null;
  get(id: string): ReferenceRow | null;
}

export function indexReferences(rows: readonly ReferenceRow[]): ReferenceIndex {
  const byId = new Map(rows.map((row) => [row.id, row]));
  const byCode = new Map<string, ReferenceRow>();
  const byName = new Map<string, ReferenceRow | null>();
  for (const row of rows) {
    byCode.set(keyOf(row.of, row.plantId, row.code), row);
    const name = keyOf(row.of, row.plantId, row.name);
    const other = byName.get(name);
    byName.set(name, other === undefined || other?.retired ? row : row.retired ? other : null);
  }
  return {
    get: (id) => byId.get(id) ?? null,
    find(of, plantId, text) {
      const key = keyOf(of, perPlant.has(of) ? plantId : null, text);
      return byCode.get(key) ?? byName.get(key) ?? null;
    },
  };
}

const keyOf = (of: Reference, plantId: string | null, text: string): string =>
  `${of} ${plantId ?? ''} ${foldCode(text)}`;
