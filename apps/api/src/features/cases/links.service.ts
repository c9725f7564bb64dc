/** What a case may refer to: reports and complaints of its own plant, and evidence of those reports. */
import { problem, unknownReference } from '#api/platform/problems.ts';
import type { ProofLink, WhyTree } from '#contracts/case-parts.ts';
import type { CaseHeader } from '#contracts/cases.ts';
import type { Tx } from '#db/client.ts';

export async function requireHeader(tx: Tx, plantId: string, header: CaseHeader): Promise<void> {
  const { customerId, housingId, terminalId, complaintIds, reportIds } = header;
  if (customerId && !(await tx.customer.findUnique({ where: { id: customerId } })))
    throw unknownReference('customerId', 'customer');
  if (housingId && !(await tx.housing.findUnique({ where: { id: housingId } })))
    throw unknownReference('housingId', 'housing');
  if (terminalId && !(await tx.terminal.findUnique({ where: { id: terminalId } })))
    throw unknownReference('terminalId', 'terminal');
  const complaints = await tx.complaint.findMany({
    where: { id: { in: complaintIds }, plantId },
    select: { id: true },
  });
  requireAll(complaintIds, complaints, 'complaintIds', 'complaint');
  const reports = await tx.failure.findMany({ where: { id: { in: reportIds }, plantId }, select: { id: true } });
  requireAll(reportIds, reports, 'reportIds', 'report');
}

function requireAll(asked: readonly string[], found: readonly { id: string }[], field: string, what: string): void {
  const known = new Set(found.map(({ id }) => id));
  const missing = asked.findIndex((id) => !known.has(id));
  if (missing >= 0) throw unknownReference(`${field}/${missing}`, what);
}

const failuresIn = (links: readonly ProofLink[]) =>
  links.flatMap((link) => (link.kind === 'report' || link.kind === 'finding' ? [link.failureId] : []));

/** Every link of the tree points to something of this case. */
export async function requireProof(tx: Tx, caseId: string, { nodes }: WhyTree): Promise<void> {
  const reports = await tx.eightDCaseReport.findMany({ where: { caseId } });
  const own = new Set(reports.map(({ failureId }) => failureId));
  const links = nodes.flatMap(({ proof }) => proof);
  const photos = await tx.photo.findMany({
    where: { id: { in: links.flatMap((link) => (link.kind === 'photo' ? [link.photoId] : [])) }, removedAt: null },
    select: { id: true, failureId: true },
  });
  const attachments = await tx.eightDAttachment.findMany({ where: { caseId, removedAt: null }, select: { id: true } });
  const findings = await tx.finding.findMany({
    where: { failureId: { in: failuresIn(links) } },
    select: { failureId: true, code: true },
  });
  const known = new Set([
    ...photos.filter(({ failureId }) => own.has(failureId)).map(({ id }) => id),
    ...attachments.map(({ id }) => id),
    ...findings.map(({ failureId, code }) => `${failureId} ${code}`),
  ]);
  const holds = (link: ProofLink): boolean => {
    if (link.kind === 'test') return true;
    if (link.kind === 'report') return own.has(link.failureId);
    if (link.kind === 'finding') return own.has(link.failureId) && known.has(`${link.failureId} ${link.code}`);
    return known.has(link.kind === 'photo' ? link.photoId : link.attachmentId);
  };
  nodes.forEach(({ proof }, place) => {
    const missing = proof.findIndex((link) => !holds(link));
    if (missing >= 0)
      throw problem(
        'unknown_reference',
        'The proof is not part of this case: link the report first, or add the file.',
        [{ path: `body/nodes/${place}/proof/${missing}`, message: 'is not part of this case' }],
      );
  });
}

/** What the trees point to may not go away under them. */
export function requireUnused(trees: readonly WhyTree[], gone: (link: ProofLink) => boolean): void {
  const used = trees.flatMap(({ nodes }) => nodes).find(({ proof }) => proof.some(gone));
  if (used) throw problem('conflict', `“${used.text}” in a 5-Why tree rests on it. Take it out of the tree first.`);
}
