import type { z } from 'zod';
import { openReport } from '#api/features/failures/open-report.service.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { takeFindings as contract, FindingInput } from '#contracts/evidence.ts';
import { type Answer, findingCatalogue } from '#contracts/finding-catalogue.ts';
import { readFindings } from './evidence.service.ts';

type Input = z.output<typeof FindingInput>;
const newtonsPerPoundForce = 4.4482216152605;

/** Answer and value as stored: a measured value decides the answer; forces are kept in newtons. */
function settle(input: Input, place: number) {
  const entry = findingCatalogue[input.code];
  const refuse = (message: string) =>
    problem('not_consistent', `${input.code}: ${message}. Mend it and send again; nothing was changed.`, [
      { path: `body/findings/${place}`, message },
    ]);
  if (entry.taken === 'computed') throw refuse('is answered by the data and cannot be entered');
  const { code, note, answer } = input;
  if (input.value === null) return { code, note, answer: answer!, value: null, limitValue: null, unit: null };
  if (entry.taken !== 'measured') throw refuse('takes yes, no or could not tell, no value');
  const unit = input.unit ?? entry.unit!;
  const convertible = entry.unit === 'N' && unit === 'lbf';
  if (unit !== entry.unit && !convertible) throw refuse(`is measured in ${entry.unit}`);
  const factor = convertible ? newtonsPerPoundForce : 1;
  const value = input.value * factor;
  const limitValue = input.limit === null ? null : input.limit * factor;
  if (limitValue === null) return { code, note, answer: answer!, value, limitValue, unit: entry.unit! };
  const decided: Answer = (entry.yesWhen === 'below' ? value < limitValue : value > limitValue) ? 'yes' : 'no';
  if (answer && answer !== decided) throw refuse(`the value against its limit says ${decided}, not ${answer}`);
  return { code, note, answer: decided, value, limitValue, unit: entry.unit! };
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
