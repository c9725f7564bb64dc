import { z } from 'zod';
import type { Day } from '#analysis/calendar/day.ts';
import { recurrences } from '#analysis/effectiveness/recurrence.ts';
import { filterWhere } from '#api/platform/filter.ts';
import type { EffectPlanInput } from '#contracts/effects.ts';
import { Day as DayText } from '#contracts/shared/scalars.ts';
import type { Tx } from '#db/client.ts';
import { sql, txRows } from '#db/sql.ts';
import { filterOf } from './scope.ts';

const Report = z.object({
  failureId: z.string(),
  number: z.string(),
  builtOn: DayText.nullable(),
  foundOn: DayText,
  cause: z.string().nullable(),
  subCause: z.string().nullable(),
  toolId: z.string().nullable(),
});
export type Recurrence = Pick<z.infer<typeof Report>, 'failureId' | 'number' | 'builtOn' | 'foundOn'> & {
  certain: boolean;
};

/** The most that are looked at; the page says so when there are more. */
const most = 500;
const any = '*';

/**
 * Reports that an action should have prevented, oldest first: same part, cause and tool, built on or after the clean point.
 * Where the report lacks its cause, its tool or its day of building, it is only possibly one.
 */
export async function findRecurrences(
  tx: Tx,
  plantId: string,
  { scope, cleanPoint }: EffectPlanInput,
  today: Day,
): Promise<Recurrence[]> {
  if (cleanPoint > today) return [];
  const { cause, subCause, tool, ...rest } = filterOf(scope, plantId);
  const reports = await txRows(
    tx,
    sql`select f.id as "failureId", f.number, f.built_on::text as "builtOn", f.found_on::text as "foundOn", f.cause::text as cause,
        f.sub_cause as "subCause", f.tool_id as "toolId"
      from failure_fact f where ${filterWhere({ ...rest, from: cleanPoint, builtFrom: cleanPoint }, [plantId])}
        and (${scope.cause}::cause is null or f.cause is null or f.cause = ${scope.cause}::cause)
        and (${scope.subCause}::text is null or f.sub_cause is null or f.sub_cause = ${scope.subCause}::text)
        and (${scope.toolId}::uuid is null or f.tool_id is null or f.tool_id = ${scope.toolId}::uuid)
      order by f.found_on, f.id limit ${most}`,
    Report,
  );
  const { certain } = recurrences(
    { part: any, cause: scope.cause ?? any, tool: scope.toolId, cleanPoint },
    reports.map((report) => ({
      key: report.failureId,
      part: any,
      cause: scope.cause ? (scope.subCause && report.subCause === null ? null : report.cause) : any,
      tool: report.toolId,
      builtOn: report.builtOn,
      foundOn: report.foundOn,
    })),
  );
  const sure = new Set(certain);
  return reports.map(({ failureId, number, builtOn, foundOn }) => ({
    failureId,
    number,
    builtOn,
    foundOn,
    certain: sure.has(failureId),
  }));
}
