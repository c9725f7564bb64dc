import type { z } from 'zod';
import type { StandardCost } from '#contracts/master-data.ts';
import type { Disposition, Stage } from '#contracts/taxonomy.ts';

export type CostKey = `${Stage} ${z.infer<typeof Disposition>}`;
export const costKey = (row: Pick<StandardCost, 'stage' | 'disposition'>): CostKey => `${row.stage} ${row.disposition}`;

/** For each stage and disposition the row that holds on the day: the latest that has begun. */
export function inEffect(rows: readonly StandardCost[], day: string): Map<CostKey, StandardCost> {
  const found = new Map<CostKey, StandardCost>();
  for (const row of rows) {
    if (row.retiredAt !== null || row.validFrom > day) continue;
    const known = found.get(costKey(row));
    if (!known || known.validFrom < row.validFrom) found.set(costKey(row), row);
  }
  return found;
}

/** The days from which something changes, latest first. */
export const datesOf = (rows: readonly StandardCost[]): string[] =>
  [...new Set(rows.filter((row) => row.retiredAt === null).map((row) => row.validFrom))].sort().reverse();

/** The cells to send: those that differ from what holds on the day, with the version of that very day's row. */
export function changedCells(
  rows: readonly StandardCost[],
  day: string,
  typed: ReadonlyMap<CostKey, number | undefined>,
) {
  const held = inEffect(rows, day);
  return [...typed].flatMap(([key, minor]) => {
    const [stage, disposition] = key.split(' ') as [Stage, z.infer<typeof Disposition>];
    const row = held.get(key);
    if (row?.terminalMinor === minor) return [];
    const own = row?.validFrom === day ? row : undefined;
    if (minor === undefined && !own) return [];
    return [{ stage, disposition, terminalMinor: minor ?? null, version: own?.version ?? null }];
  });
}
