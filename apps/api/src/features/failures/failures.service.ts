import { withdrawConfirmation } from '#api/features/evidence/withdraw.service.ts';
import { holds, requirePlant } from '#api/platform/actor.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { NewReport, Report, ReportInput } from '#contracts/failures.ts';
import { stageOf } from '#contracts/taxonomy.ts';
import { sql, txExecute } from '#db/sql.ts';
import { finish } from './finish.ts';
import { reportNumber, takeNumbers } from './numbering.ts';
import { openReport } from './open-report.service.ts';
import { checkReferences, type Facts } from './references.queries.ts';
import { findReport, saveReport, toColumns } from './reports.repository.ts';
import { keepChange, requireOrder, sortingColumns } from './sorting.service.ts';

/** What the master data decides: the plant's stage sets the common one, a safety-relevant housing sets the flag. */
function settle<Input extends ReportInput>(report: Input, facts: Facts): Input {
  if (report.foundOn > facts.today)
    throw problem('not_consistent', `At the plant it is ${facts.today}. Give the day the failure was found.`, [
      { path: 'body/foundOn', message: 'lies in the future' },
    ]);
  if (facts.foundDay !== null && facts.foundDay !== report.foundOn)
    throw problem('not_consistent', `At the plant the time found falls on ${facts.foundDay}. Make the two agree.`, [
      { path: 'body/foundAt', message: 'is not on the day found' },
    ]);
  return {
    ...report,
    found: facts.stage === null ? report.found : stageOf(facts.stage),
    safety: report.safety || facts.safety,
  };
}

/** The report that was sent under this id before, if any. Two senders of one id wait for each other. */
async function findFirst(unit: Unit, id: string, plantId: string): Promise<Report | null> {
  await txExecute(unit.tx, sql`select pg_advisory_xact_lock(hashtextextended(${id}, 0))`);
  const first = await findReport(unit.tx, id);
  if (first && (first.plantId !== plantId || !holds(unit.actor, 'failures.read', first.plantId)))
    throw problem('already_exists', 'This id belongs to another report. Make a new UUID for this one.', [
      { path: 'body/id', message: 'is taken' },
    ]);
  return first;
}

export async function createReport(unit: Unit, { id = newId(), sorting, ...input }: NewReport): Promise<Report> {
  const { plantId } = input;
  requirePlant(unit.actor, 'failures.write', plantId);
  if (sorting) requirePlant(unit.actor, 'failures.sort', plantId);
  const first = await findFirst(unit, id, plantId);
  if (first) return first;
  const facts = await checkReferences(unit.tx, input, unit.at);
  const report = settle(input, facts);
  requireOrder(sorting?.origin ?? null, report.found, 'sorting/origin');
  const year = Number(report.foundOn.slice(0, 4));
  const running = await takeNumbers(unit.tx, plantId, year);
  await unit.tx.failure.create({
    data: {
      ...toColumns(report),
      ...(sorting && sortingColumns(unit, sorting)),
      id,
      number: reportNumber(facts.plantCode, year, running),
      reportedAt: unit.at,
      reportedBy: unit.actor.id,
    },
    select: { id: true },
  });
  if (sorting) await keepChange(unit, { id, plantId }, sorting);
  return finish(unit, 'recorded', null, { id, plantId });
}

export async function updateReport(unit: Unit, id: string, version: number, input: ReportInput): Promise<Report> {
  const before = await openReport(unit, 'failures.write', id);
  if (input.plantId !== before.plantId)
    throw problem('not_consistent', 'A report stays with its plant. Void it and record it at the right plant.', [
      { path: 'body/plantId', message: 'must stay the same' },
    ]);
  const { plantId, lineId, stageId, housingId, terminalId, wireId, customerId, toolIds } = before;
  const kept = [plantId, lineId, stageId, housingId, terminalId, wireId, customerId, ...toolIds];
  const facts = await checkReferences(
    unit.tx,
    input,
    unit.at,
    kept.filter((it) => it !== null),
  );
  const report = settle(input, facts);
  requireOrder(before.origin, report.found, 'found');
  await saveReport(unit.tx, before, version, toColumns(report));
  return finish(unit, 'corrected', before, before);
}

export async function voidReport(unit: Unit, id: string, version: number, reason: string): Promise<Report> {
  const before = await openReport(unit, 'failures.void', id);
  await withdrawConfirmation(unit, before);
  await saveReport(unit.tx, before, version, { voidedAt: unit.at, voidReason: reason });
  return finish(unit, 'voided', before, before);
}
