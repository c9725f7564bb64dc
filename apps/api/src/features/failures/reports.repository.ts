import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { changedMeanwhile, notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Report, ReportInput } from '#contracts/failures.ts';
import type { Permission } from '#contracts/permissions.ts';
import { stageNumber } from '#contracts/taxonomy.ts';
import type { Database, Tx } from '#db/client.ts';
import type { Prisma } from '#db/generated/client.ts';
import { queryOne, txOne } from '#db/sql.ts';
import { ReportRecord, reportSql } from './report.queries.ts';

const dayOf = (day: string | null) => (day === null ? null : new Date(day));

/** The columns a report's sender states. */
export function toColumns(report: ReportInput) {
  const { toolIds, foundOn, foundAt, builtOn, found, cavities, ...same } = report;
  const [toolId = null, ...otherToolIds] = [...new Set(toolIds)];
  return {
    ...same,
    foundOn: new Date(foundOn),
    foundAt: dayOf(foundAt),
    builtOn: dayOf(builtOn),
    found: stageNumber(found),
    cavities: [...new Set(cavities)],
    toolId,
    otherToolIds,
  };
}

export const findReport = (tx: Tx, id: string): Promise<Report | null> => txOne(tx, reportSql(id), ReportRecord);

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

/** Changes the report if it still has the version that was read. */
export async function saveReport(
  tx: Tx,
  { id, plantId }: Report,
  version: number,
  data: Prisma.FailureUncheckedUpdateManyInput,
): Promise<void> {
  const { count } = await tx.failure.updateMany({
    where: { id, plantId, version, voidedAt: null },
    data: { ...data, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
}
