import type { z } from 'zod';
import type { ImportKind } from '#contracts/taxonomy.ts';
import type { CopyValue } from './copy-text.ts';
import { type FailureContext, readFailure } from './failure-row.ts';
import { readFindingRow } from './finding-row.ts';
import { readForce } from './force-row.ts';
import { readProduction } from './production-row.ts';
import type { RowValues } from './row-values.ts';

/** The row at hand as a row of its kind's staging table; null where it is refused (the faults are in `row`). */
export const readers: Readonly<
  Record<z.infer<typeof ImportKind>, (row: RowValues, context: FailureContext) => CopyValue[] | null>
> = {
  failures: readFailure,
  production: (row, { today }) => readProduction(row, today),
  findings: readFindingRow,
  force: (row, { today }) => readForce(row, today),
};
