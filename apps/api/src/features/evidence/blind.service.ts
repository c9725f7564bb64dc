import { z } from 'zod';
import { type Actor, plantsWith } from '#api/platform/actor.ts';
import type { Tx } from '#db/client.ts';
import { sql, txRows } from '#db/sql.ts';

const Hidden = z.object({ failureId: z.string() });

/** The reports whose cause the actor may not see before giving a second opinion on them. */
export async function hiddenFrom(tx: Tx, actor: Actor): Promise<ReadonlySet<string>> {
  if (plantsWith(actor, 'failures.sort').length === 0) return new Set();
  const rows = await txRows(
    tx,
    sql`select o.failure_id as "failureId" from opinion_open o where o.person_id = ${actor.id}::uuid`,
    Hidden,
  );
  return new Set(rows.map(({ failureId }) => failureId));
}

/** A line of a list without what a second opinion must not know. */
export const veil = <Row extends { id: string }>(row: Row, hidden: ReadonlySet<string>): Row =>
  hidden.has(row.id) ? { ...row, cause: null, subCause: null, origin: null } : row;
