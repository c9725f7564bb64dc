import { requirePlant } from '#api/platform/actor.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Complaint, ComplaintInput, NewComplaint } from '#contracts/complaints.ts';
import { finish, saveComplaint } from './finish.ts';
import { complaintNumber, takeNumber } from './numbering.ts';
import { openComplaint } from './open-complaint.service.ts';
import { replyTimesOf, restartClocks, startClocks } from './reckoning.service.ts';
import { checkReferences, type Facts } from './references.queries.ts';
import { tellOwner, tellSafety } from './telling.service.ts';

const oldest = 5 * 365 * 86_400_000;

function requireDates(input: ComplaintInput, facts: Facts, recordedAt: Date): void {
  const received = new Date(input.receivedAt);
  if (received > recordedAt || recordedAt.getTime() - received.getTime() > oldest)
    throw problem(
      'not_consistent',
      'Give the time at which the customer’s word arrived: before it is recorded here, and at most five years ago.',
      [{ path: 'body/receivedAt', message: 'must lie before it is recorded, by at most five years' }],
    );
  for (const field of ['builtOn', 'foundOn'] as const)
    if (input[field] !== null && input[field] > facts.today)
      throw problem('not_consistent', `At the plant it is ${facts.today}. Give a day that has been.`, [
        { path: `body/${field}`, message: 'lies in the future' },
      ]);
}

const toColumns = ({ receivedAt, builtOn, foundOn, lots, serials, ...same }: ComplaintInput) => ({
  ...same,
  lots: [...new Set(lots)],
  serials: [...new Set(serials)],
  receivedAt: new Date(receivedAt),
  builtOn: builtOn && new Date(builtOn),
  foundOn: foundOn && new Date(foundOn),
});

function ownerOf({ actor }: Unit, ownerId: string | null): string {
  if (ownerId) return ownerId;
  if (actor.kind === 'person') return actor.id;
  throw problem('not_consistent', 'Name the person who answers for the complaint.', [
    { path: 'body/ownerId', message: 'is needed where a machine records it' },
  ]);
}

export async function createComplaint(unit: Unit, input: NewComplaint): Promise<Complaint> {
  const { tx, actor, at } = unit;
  requirePlant(actor, 'complaints.write', input.plantId);
  const ownerId = ownerOf(unit, input.ownerId);
  const facts = await checkReferences(tx, { ...input, ownerId }, at);
  requireDates(input, facts, at);
  const id = newId();
  const receivedAt = new Date(input.receivedAt);
  const safety = input.safety || facts.safety;
  const number = complaintNumber(facts.plantCode, facts.year, await takeNumber(tx, input.plantId, facts.year));
  await tx.complaint.create({
    data: { ...toColumns(input), id, number, ownerId, safety, createdAt: at, createdBy: actor.id },
  });
  await startClocks(unit, { id, ...input, ownerId, receivedAt });
  const about = { id, number, ...input, customerCode: facts.customerCode ?? '' };
  if (safety) await tellSafety(unit, about);
  await tellOwner(unit, about, ownerId);
  return finish(unit, 'recorded', null, id);
}

export async function updateComplaint(
  unit: Unit,
  id: string,
  version: number,
  input: ComplaintInput,
): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  if (input.plantId !== before.plantId)
    throw problem(
      'not_consistent',
      'A complaint stays with its plant. Close it here and record it at the right plant.',
      [{ path: 'body/plantId', message: 'must stay the same' }],
    );
  const ownerId = input.ownerId ?? before.ownerId;
  const kept = [before.plantId, before.customerId, before.housingId, before.terminalId, before.ownerId];
  const facts = await checkReferences(
    unit.tx,
    { ...input, ownerId },
    unit.at,
    kept.filter((it) => it !== null),
  );
  requireDates(input, facts, new Date(before.createdAt));
  const receivedAt = new Date(input.receivedAt);
  const flagged = facts.safety && !before.safety;
  await saveComplaint(unit, id, version, { ...toColumns(input), ownerId, ...(flagged && { safety: true }) });
  if (input.customerId !== before.customerId || receivedAt.toISOString() !== before.receivedAt)
    await restartClocks(
      unit,
      { id, plantId: before.plantId, receivedAt },
      await replyTimesOf(unit.tx, input.customerId),
    );
  const about = { id, number: before.number, ...input, customerCode: facts.customerCode ?? '' };
  if (flagged) await tellSafety(unit, about);
  if (ownerId !== before.ownerId) await tellOwner(unit, about, ownerId);
  return finish(unit, 'corrected', before, id);
}
