import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import {
  caseParts,
  type Discipline,
  type PartContent,
  type PartName,
  treeNames,
  type WhyTree,
} from '#contracts/case-parts.ts';
import type { Prisma } from '#db/generated/client.ts';
import { readParts } from './cases.repository.ts';
import { requireProof } from './links.service.ts';
import { lockForWrite, openForWrite } from './open-case.service.ts';

/** Refused while the discipline holds a signature. */
export async function requireUnsigned({ tx }: Unit, caseId: string, discipline: Discipline): Promise<void> {
  const signature = await tx.eightDSignature.findFirst({ where: { caseId, discipline, voidedAt: null } });
  if (signature)
    throw problem(
      'conflict',
      `D${discipline} is signed by ${signature.signer}. Reopen it, with a reason, before anything in it changes.`,
    );
}

async function requireReach({ tx }: Unit, { housingIds, terminalIds }: PartContent<'reach'>): Promise<void> {
  const housings = await tx.housing.count({ where: { id: { in: housingIds } } });
  const terminals = await tx.terminal.count({ where: { id: { in: terminalIds } } });
  if (housings < new Set(housingIds).size || terminals < new Set(terminalIds).size)
    throw problem('unknown_reference', 'One of the parts does not exist. Choose from the list.', [
      { path: housings < new Set(housingIds).size ? 'body/housingIds' : 'body/terminalIds', message: 'no such part' },
    ]);
}

/** Saves one part under the version that was read; what belongs to no discipline may change until the case is dropped. */
export async function savePart<Name extends PartName>(
  unit: Unit,
  caseId: string,
  name: Name,
  version: number,
  content: PartContent<Name>,
): Promise<void> {
  const { tx, at, actor } = unit;
  const { discipline } = caseParts[name];
  const found = await (discipline === null ? lockForWrite : openForWrite)(unit, 'cases.write', caseId);
  if (found.state === 'dropped') throw problem('conflict', 'The case was dropped and stays as it is.');
  if (discipline !== null) await requireUnsigned(unit, caseId, discipline);
  const before = (await readParts(tx, caseId))[name];
  if (before.version !== version) throw changedMeanwhile();
  if (treeNames.some((tree) => tree === name)) await requireProof(tx, caseId, content as WhyTree);
  if (name === 'reach') await requireReach(unit, content as PartContent<'reach'>);
  const row = {
    content: content as Prisma.InputJsonObject,
    version: version + 1,
    changedAt: at,
    changedBy: actor.name,
  };
  await tx.eightDPart.upsert({
    where: { caseId_part: { caseId, part: name } },
    create: { caseId, part: name, ...row },
    update: row,
  });
  await recordChange(unit, {
    ...{ action: `${name} saved`, entity: 'case', entityId: caseId, label: found.number, plantId: found.plantId },
    before: version === 0 ? null : (before.content as object),
    after: content as object,
  });
}
