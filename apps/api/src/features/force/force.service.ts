import { toNewtons } from '#analysis/force/units.ts';
import { holds, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile, notFound, problem, unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { ForceInput, ForceSample } from '#contracts/force.ts';
import { findSample, findUsable } from './force.queries.ts';

const columnsOf = ({ values, minimum, day, unit, ...same }: ForceInput) => ({
  ...same,
  unit,
  day: new Date(day),
  entered: values,
  newtons: values.map((value) => toNewtons(value, unit)),
  minimumN: minimum === null ? null : toNewtons(minimum, unit),
});

async function requireUsable({ tx, at }: Unit, input: ForceInput): Promise<void> {
  const usable = await findUsable(tx, input, at);
  if (!usable) throw unknownReference('plantId', 'plant');
  if (input.day > usable.today)
    throw problem(
      'not_consistent',
      `At the plant it is ${usable.today}. Give the day on which the forces were measured.`,
      [{ path: 'body/day', message: 'lies in the future' }],
    );
  for (const part of ['terminal', 'tool', 'housing', 'wire'] as const)
    if (!usable[part]) throw unknownReference(`${part}Id`, part);
}

/** A second sample of the same terminal, tool, parts and day must name a reference of its own. */
async function requireOther({ tx }: Unit, input: ForceInput, id: string | null): Promise<void> {
  const { plantId, kind, terminalId, toolId, housingId, wireId, reference } = input;
  const same = await tx.forceSample.findFirst({
    where: {
      plantId,
      kind,
      terminalId,
      toolId,
      housingId,
      wireId,
      reference,
      day: new Date(input.day),
      voidedAt: null,
      ...(id && { id: { not: id } }),
    },
    select: { id: true },
  });
  if (same)
    throw problem(
      'already_exists',
      'There is a sample of this terminal, tool, parts and day. Correct that one, or give this one a reference of its own.',
      [{ path: 'body/reference', message: 'must tell it apart from the sample that is here' }],
    );
}

const auditedAs = (sample: ForceSample) => ({
  entity: 'force_sample',
  entityId: sample.id,
  label: `${sample.terminalCode} ${sample.day}`,
  plantId: sample.plantId,
});

export async function createSample(unit: Unit, input: ForceInput): Promise<ForceSample> {
  requirePlant(unit.actor, 'force.write', input.plantId);
  await requireUsable(unit, input);
  await requireOther(unit, input, null);
  const id = newId();
  await unit.tx.forceSample.create({
    data: { ...columnsOf(input), id, recordedAt: unit.at, recordedBy: unit.actor.name },
  });
  const after = (await findSample(unit.tx, id))!;
  await recordChange(unit, { ...auditedAs(after), action: 'recorded', before: null, after });
  return after;
}

async function openSample(unit: Unit, id: string): Promise<ForceSample> {
  const before = await findSample(unit.tx, id);
  if (!before || !holds(unit.actor, 'force.read', before.plantId)) throw notFound('force sample');
  requirePlant(unit.actor, 'force.write', before.plantId);
  return before;
}

export async function updateSample(unit: Unit, id: string, version: number, input: ForceInput): Promise<ForceSample> {
  const before = await openSample(unit, id);
  if (input.plantId !== before.plantId)
    throw problem('not_consistent', 'A sample stays with its plant. Void it and enter it at the right plant.', [
      { path: 'body/plantId', message: 'must stay the same' },
    ]);
  await requireUsable(unit, input);
  await requireOther(unit, input, id);
  const { count } = await unit.tx.forceSample.updateMany({
    where: { id, plantId: before.plantId, version, voidedAt: null },
    data: { ...columnsOf(input), version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  const after = (await findSample(unit.tx, id))!;
  await recordChange(unit, { ...auditedAs(after), action: 'corrected', before, after });
  return after;
}

export async function voidSample(unit: Unit, id: string, version: number, reason: string): Promise<void> {
  const before = await openSample(unit, id);
  const { count } = await unit.tx.forceSample.updateMany({
    where: { id, plantId: before.plantId, version, voidedAt: null },
    data: { voidedAt: unit.at, voidReason: reason, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  await recordChange(unit, {
    ...auditedAs(before),
    action: 'voided',
    before: null,
    after: { voidReason: reason },
  });
}
