import type { Answers } from '#analysis/suggestion/suggest.ts';
import { openReport } from '#api/features/failures/open-report.service.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Report } from '#contracts/failures.ts';
import { type DecisionInput, keepDecision } from './confirmation.service.ts';
import { answersOf, type Considered, consider, readFindings } from './evidence.service.ts';
import { lockReport } from './learning.repository.ts';
import { withdrawConfirmation } from './withdraw.service.ts';

/** What a batch must share for one decision to hold for all of it. */
function traitsOf({ plantId, toolIds, reelLot, housingLot }: Report, answers: Answers): string {
  return JSON.stringify([
    plantId,
    toolIds[0] ?? null,
    reelLot,
    housingLot,
    [...answers].sort(([a], [b]) => (a < b ? -1 : 1)),
  ]);
}

/** Only what people took is compared: what the data answers differs with the day. */
export async function traitsOfReport(unit: Pick<Unit, 'tx'>, report: Report): Promise<string> {
  const findings = await readFindings(unit.tx, report);
  return traitsOf(report, answersOf(findings.filter(({ source }) => source !== 'computed')));
}

function requireCommon({ toolIds, reelLot, housingLot }: Report, count: number): void {
  if (count > 1 && toolIds.length === 0 && !reelLot && !housingLot)
    throw problem('not_consistent', 'These reports name neither tool nor lot. Decide on each of them alone.', [
      { path: 'body/ids', message: 'must share a tool or a lot' },
    ]);
}

/** Confirms one cause for reports that share plant, tool, lots and findings; refuses all where one differs. */
export async function confirmBatch(
  unit: Unit,
  ids: readonly string[],
  decision: DecisionInput,
): Promise<{ confirmed: number }> {
  const distinct = [...new Set(ids)].sort();
  const reports: Report[] = [];
  for (const id of distinct) {
    await lockReport(unit.tx, id);
    reports.push(await openReport(unit, 'failures.sort', id));
  }
  const traits: string[] = [];
  for (const report of reports) traits.push(await traitsOfReport(unit, report));
  const different = reports.filter((_, place) => traits[place] !== traits[0]);
  if (different.length > 0)
    throw problem(
      'not_consistent',
      `${different
        .map(({ number }) => number)
        .slice(0, 10)
        .join(
          ', ',
        )} differ from ${reports[0]!.number} in plant, tool, lot or findings. Leave them out and decide on them alone.`,
      [{ path: 'body/ids', message: 'must share tool, lot and findings' }],
    );
  requireCommon(reports[0]!, reports.length);
  // all are judged before any is learned from: reports alike are one event and must not vouch for each other
  for (const report of reports) await withdrawConfirmation(unit, report);
  const considered: Considered[] = [];
  for (const report of reports) considered.push(await consider(unit.tx, report));
  for (const [place, report] of reports.entries())
    await keepDecision(unit, report, report.version, decision, considered[place]!);
  return { confirmed: reports.length };
}
