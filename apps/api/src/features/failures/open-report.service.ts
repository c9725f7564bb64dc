import { hiddenFrom } from '#api/features/evidence/blind.service.ts';
import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Report } from '#contracts/failures.ts';
import type { Permission } from '#contracts/permissions.ts';
import type { Database } from '#db/client.ts';
import { queryOne } from '#db/sql.ts';
import { ReadRecord, readSql } from './report.queries.ts';
import { findReport } from './reports.repository.ts';

const opinionFirst = () =>
  problem(
    'opinion_first',
    'You took a second opinion on this report upon you. Give it first; until then its cause is hidden from you.',
  );

/** A report for reading, also where its cause is hidden from the actor; one of a foreign plant is simply not found. */
export async function readBehind(db: Database, actor: Actor, id: string) {
  const report = await queryOne(db.pool, readSql(id), ReadRecord, { name: 'report' });
  if (!report || !holds(actor, 'failures.read', report.plantId)) throw notFound('report');
  return report;
}

/** A report for reading. */
export async function readReport(db: Database, actor: Actor, id: string): Promise<Report> {
  const { hiddenFrom, ...report } = await readBehind(db, actor, id);
  if (hiddenFrom.includes(actor.id)) throw opinionFirst();
  return report;
}

/** The report as it is before a write: the actor may write it, and it is not void. */
export async function openReport(unit: Unit, permission: Permission, id: string): Promise<Report> {
  const report = await findReport(unit.tx, id);
  if (!report || !holds(unit.actor, 'failures.read', report.plantId)) throw notFound('report');
  requirePlant(unit.actor, permission, report.plantId);
  if ((await hiddenFrom(unit.tx, unit.actor)).has(id)) throw opinionFirst();
  if (report.voidedAt)
    throw problem('conflict', 'The report is void and stays as it is. Record the failure anew if it did happen.');
  return report;
}
