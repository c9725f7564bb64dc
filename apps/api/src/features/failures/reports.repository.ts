import { changedMeanwhile } from '#api/platform/problems.ts';
import type { Report, ReportInput } from '#contracts/failures.ts';
import { stageNumber } from '#contracts/taxonomy.ts';
import type { Tx } from '#db/client.ts';
import type { Prisma } from '#db/generated/client.ts';
import { txOne } from '#db/sql.ts';
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
