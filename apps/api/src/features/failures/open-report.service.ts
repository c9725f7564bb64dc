import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Report } from '#contracts/failures.ts';
import type { Permission } from '#contracts/permissions.ts';
import type { Database } from '#db/client.ts';
import { queryOne } from '#db/sql.ts';
import { ReportRecord, reportSql } from './report.queries.ts';
import { findReport } from './reports.repository.ts';

/** A report for reading; one of a foreign plant is simply not found. */
export async function readReport(db: Database, actor: Actor, id: string): Promise<Report> {
  const report = await queryOne(db.pool, reportSql(id), ReportRecord, { name: 'report' });
  if (!report || !holds(actor, 'failures.read', report.plantId)) throw notFound('report');
  return report;
}

/** The report as it is before a write: the actor may write it, and it is not void. */
export async function openReport(unit: Unit, permission: Permission, id: string): Promise<Report> {
  const report = await findReport(unit.tx, id);
  if (!report || !holds(unit.actor, 'failures.read', report.plantId)) throw notFound('report');
  requirePlant(unit.actor, permission, report.plantId);
  if (report.voidedAt)
    throw problem('conflict', 'The report is void and stays as it is. Record the failure anew if it did happen.');
  return report;
}
