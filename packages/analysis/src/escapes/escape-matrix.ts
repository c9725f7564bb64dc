import { gatesPassed } from './gates-passed.ts';

/** Reports, failed terminals, and money in minor units of one currency. */
export type Amounts = { reports: number; terminals: number; minor: number };

export type EscapeRow = Amounts & { origin: number | null; found: number };

export type EscapeMatrix = {
  /** cells[origin - 1][found - 1] */
  cells: Amounts[][];
  /** by stage found, of unknown origin */
  unknownOrigin: Amounts[];
  byOrigin: Amounts[];
  /** by stage found, unknown origin included */
  byFound: Amounts[];
  /** found before the stage that is said to have made them; also in their cells */
  impossible: Amounts;
  total: Amounts;
};

export type Escape = EscapeRow & { origin: number; gatesPassed: number };

const nothing = (): Amounts => ({ reports: 0, terminals: 0, minor: 0 });

function add(sum: Amounts, row: Amounts): void {
  sum.reports += row.reports;
  sum.terminals += row.terminals;
  sum.minor += row.minor;
}

/**
 * Origin × found matrix with its margins. Every row is counted once in `total`, once in `byFound`, and once in either
 * `byOrigin` or `unknownOrigin`, so the margins always add up to the total.
 *
 * Source of the form: Kan S.H. (2002) Metrics and Models in Software Quality Engineering, 2nd ed., chapter 6.
 *
 * @param rows sums per origin and stage found; several rows of one cell are added up
 * @throws RangeError when a stage is not 1 to `stages`
 */
export function escapeMatrix(rows: readonly EscapeRow[], stages = 10): EscapeMatrix {
  const line = (): Amounts[] => Array.from({ length: stages }, nothing);
  const matrix: EscapeMatrix = {
    cells: Array.from({ length: stages }, line),
    unknownOrigin: line(),
    byOrigin: line(),
    byFound: line(),
    impossible: nothing(),
    total: nothing(),
  };
  const at = (amounts: Amounts[], stage: number): Amounts => {
    const found = amounts[stage - 1];
    if (!found) throw new RangeError(`A stage must be 1 to ${stages}, not ${stage}.`);
    return found;
  };
  for (const row of rows) {
    add(at(matrix.byFound, row.found), row);
    add(matrix.total, row);
    if (row.origin === null) {
      add(at(matrix.unknownOrigin, row.found), row);
      continue;
    }
    add(at(matrix.byOrigin, row.origin), row);
    add(matrix.cells[row.origin - 1]![row.found - 1]!, row);
    if (row.origin > row.found) add(matrix.impossible, row);
  }
  return matrix;
}

/**
 * The cells whose faults passed at least `fewest` gates, the longest escapes first, then the dearest.
 *
 * @param gates the stages that exist in the plant the rows come from
 */
export function longEscapes(rows: readonly EscapeRow[], fewest = 2, gates?: readonly number[]): Escape[] {
  return rows
    .flatMap((row) => {
      const passed = gatesPassed(row.origin, row.found, gates);
      return row.origin !== null && passed !== null && passed >= fewest
        ? [{ ...row, origin: row.origin, gatesPassed: passed }]
        : [];
    })
    .sort((a, b) => b.gatesPassed - a.gatesPassed || b.minor - a.minor || b.reports - a.reports);
}
