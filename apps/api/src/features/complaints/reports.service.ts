import { createReport } from '#api/features/failures/failures.service.ts';
import { findReport } from '#api/features/failures/find-report.service.ts';
import { requirePlant } from '#api/platform/actor.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Complaint } from '#contracts/complaints.ts';
import { NewReport } from '#contracts/failures.ts';
import type { StoredComplaint } from './complaint.queries.ts';
import { finish } from './finish.ts';
import { openComplaint } from './open-complaint.service.ts';

async function link(unit: Unit, { id, plantId }: StoredComplaint, failureId: string): Promise<void> {
  await unit.tx.complaintFailure.createMany({
    data: [{ complaintId: id, plantId, failureId, linkedAt: unit.at, linkedBy: unit.actor.id }],
    skipDuplicates: true,
  });
}

/** Links a report of the same plant, named by its number or id. */
export async function linkReport(unit: Unit, id: string, named: string): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  const report = await findReport(unit.tx, before.plantId, named);
  if (!report)
    throw problem(
      'unknown_reference',
      'There is no such failure report at this plant. Give its number, such as on its page.',
      [{ path: 'body/report', message: 'no such report' }],
    );
  if (report.voided) throw problem('conflict', 'This report is void. Link the one that replaced it.');
  await link(unit, before, report.id);
  return finish(unit, 'report linked', before, id);
}

type Found = { source: 'customer' | 'field'; quantityFound: number; foundOn: string };

/** What the intake knows, as a failure report. Several lots or serials are named in the note, so that none is lost. */
function reportOf(complaint: StoredComplaint, { source, quantityFound, foundOn }: Found) {
  const { lots, serials } = complaint;
  const rest = [
    complaint.title,
    ...(lots.length > 1 ? [`Lots: ${lots.join(', ')}`] : []),
    ...(serials.length > 2 ? [`Serials: ${serials.join(', ')}`] : []),
  ];
  return NewReport.parse({
    plantId: complaint.plantId,
    foundOn,
    builtOn: complaint.builtOn !== null && complaint.builtOn <= foundOn ? complaint.builtOn : null,
    found: 'field',
    source,
    housingId: complaint.housingId,
    terminalId: complaint.terminalId,
    reelLot: lots.length === 1 ? lots[0] : null,
    serialFrom: serials[0] ?? null,
    serialTo: serials.length > 1 ? serials.at(-1) : null,
    customerId: complaint.customerId,
    customerRef: complaint.customerRef,
    effect: complaint.effect,
    quantityFound,
    safety: complaint.safety,
    note: rest.join('\n').slice(0, 10_000),
  });
}

export async function recordReport(unit: Unit, id: string, found: Found): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  requirePlant(unit.actor, 'failures.write', before.plantId);
  const report = await createReport(unit, reportOf(before, found));
  await link(unit, before, report.id);
  return finish(unit, 'report recorded', before, id);
}

export async function unlinkReport(unit: Unit, id: string, failureId: string): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  const { count } = await unit.tx.complaintFailure.deleteMany({ where: { complaintId: id, failureId } });
  if (count === 0) throw notFound('link');
  return finish(unit, 'report unlinked', before, id);
}
