import type { z } from 'zod';
import { openReport } from '#api/features/failures/open-report.service.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { takeFindings as contract, FindingInput } from '#contracts/evidence.ts';
import { readFindings } from './evidence.service.ts';
import { settleFinding } from './findings.rules.ts';

type Input = z.output<typeof FindingInput>;
/** The finding as stored, or a refusal that says what is wrong with it. */
function settle(input: Input, place: number) {
  const settled = settleFinding(input);
  if (typeof settled !== 'string') return { ...settled, note: input.note };
  throw problem('not_consistent', `${input.code}: ${settled}. Mend it and send again; nothing was changed.`, [
    { path: `body/findings/${place}`, message: settled },
  ]);
}

/** Takes, changes and removes findings of a report, with one audit row. */
export async function takeFindings(
  unit: Unit,
  id: string,
  { findings, remove }: z.output<typeof contract.body & {}>,
): Promise<void> {
  const { tx, at, actor } = unit;
  const report = await openReport(unit, 'failures.write', id);
  const { plantId } = report;
  const before = await readFindings(tx, report);
  await tx.finding.deleteMany({ where: { plantId, failureId: id, code: { in: remove } } });
  for (const [place, input] of findings.entries()) {
    const row = { ...settle(input, place), importId: null, takenBy: actor.name, takenAt: at };
    await tx.finding.upsert({
      where: { plantId_failureId_code: { plantId, failureId: id, code: input.code } },
      create: { id: newId(), plantId, failureId: id, ...row },
      update: row,
    });
  }
  const after = await readFindings(tx, report);
  const taken = (all: typeof after) =>
    Object.fromEntries(
      all.filter(({ source }) => source !== 'computed').map(({ code, answer, value }) => [code, value ?? answer]),
    );
  await recordChange(unit, {
    action: 'findings taken',
    entity: 'failure',
    entityId: id,
    label: report.number,
    plantId,
    before: taken(before),
    after: taken(after),
  });
}
