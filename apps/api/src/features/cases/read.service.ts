import { z } from 'zod';
import type { Actor } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import type { AuditEntry } from '#contracts/audit.ts';
import { type Discipline, disciplines, type PartName, partNames, type SignRole } from '#contracts/case-parts.ts';
import type { Attachment, Case, caseHistory, DisciplineState, KeptDocument, Signature } from '#contracts/cases.ts';
import type { Locale, Paper } from '#contracts/shared/scalars.ts';
import { Id } from '#contracts/shared/scalars.ts';
import type { Database, Tx } from '#db/client.ts';
import { sql, txOne } from '#db/sql.ts';
import { askedOf, complaintsOf, RowOf, reportsOf, rowsSql } from './case.queries.ts';
import { readFacts, readParts, type StoredPart, versionOfDiscipline } from './cases.repository.ts';
import { type CaseFacts, missingIn, rolesFor } from './needs.rules.ts';
import { findCase } from './open-case.service.ts';

const iso = (at: Date | null) => at?.toISOString() ?? null;

function stateOf(facts: CaseFacts, parts: Record<PartName, StoredPart>, discipline: Discipline): DisciplineState {
  const signedAs = [...(facts.signed.get(discipline) ?? [])];
  return {
    discipline,
    version: versionOfDiscipline(parts, discipline),
    missing: missingIn(facts, discipline),
    signedAs,
    toSignAs: rolesFor(discipline, facts.safety).filter((role) => !signedAs.includes(role)),
    locked: signedAs.length > 0,
  };
}

export async function signaturesOf(tx: Tx, caseId: string): Promise<Signature[]> {
  const rows = await tx.eightDSignature.findMany({ where: { caseId }, orderBy: { id: 'asc' } });
  return rows.map(({ id, discipline, role, signer, signedAt, voidedAt, voidedBy, voidReason }) => ({
    ...{ id, signer, voidedBy, voidReason },
    discipline: discipline as Discipline,
    role: role as SignRole,
    signedAt: signedAt.toISOString(),
    voidedAt: iso(voidedAt),
  }));
}

export async function attachmentsOf(tx: Tx, caseId: string): Promise<Attachment[]> {
  const rows = await tx.eightDAttachment.findMany({ where: { caseId, removedAt: null }, orderBy: { id: 'asc' } });
  return rows.map(({ caseId: _, file: __, removedAt: ___, ...row }) => ({
    ...row,
    discipline: row.discipline as Discipline,
    addedAt: row.addedAt.toISOString(),
  }));
}

async function commentsOf(tx: Tx, caseId: string): Promise<Case['comments']> {
  const rows = await tx.eightDComment.findMany({ where: { caseId }, orderBy: { id: 'asc' } });
  return rows.map(({ id, discipline, text, author, at }) => ({
    ...{ id, text, author },
    discipline: discipline as Discipline,
    at: at.toISOString(),
  }));
}

export async function documentsOf(tx: Tx, caseId: string): Promise<KeptDocument[]> {
  const rows = await tx.eightDDocument.findMany({ where: { caseId }, orderBy: { revision: 'desc' } });
  return rows.map(({ caseId: _, selection: __, ...row }) => ({
    ...row,
    format: row.format as 'pdf' | 'docx',
    locale: row.locale as Locale,
    paper: row.paper as Paper,
    keptAt: row.keptAt.toISOString(),
  }));
}

/** The whole case as its own plant sees it, from one moment. */
export const readCase = (db: Database, actor: Actor, id: string): Promise<Case> =>
  db.prisma.$transaction((tx) => readCaseIn(tx, actor, id), { isolationLevel: 'RepeatableRead' });

export async function readCaseIn(tx: Tx, actor: Actor, id: string): Promise<Case> {
  const found = await findCase(tx, actor, id);
  const row = await txOne(tx, rowsSql([sql`c.id = ${id}::uuid`]), RowOf);
  const { signed: _, reports: __, complaints: ___, ...head } = row!;
  const parts = await readParts(tx, id);
  const facts = await readFacts(tx, id, parts);
  return {
    ...head,
    dropReason: found.dropReason,
    complaints: await complaintsOf(tx, id),
    reports: await reportsOf(tx, id),
    parts: Object.fromEntries(
      partNames.map((name) => [name, { ...parts[name], changedAt: iso(parts[name].changedAt) }]),
    ) as Case['parts'],
    disciplines: disciplines.map((discipline) => stateOf(facts, parts, discipline)),
    signatures: await signaturesOf(tx, id),
    comments: await commentsOf(tx, id),
    attachments: await attachmentsOf(tx, id),
    documents: await documentsOf(tx, id),
    readAcross: await askedOf(tx, id),
    version: found.version,
  };
}

/** Every change of the case, newest first. */
export async function readHistory(
  db: Database,
  actor: Actor,
  id: string,
  { cursor, limit }: z.output<NonNullable<typeof caseHistory.query>>,
): Promise<{ items: AuditEntry[]; next: string | null }> {
  await findCase(db.prisma, actor, id);
  const after = decodeCursor(cursor, z.tuple([Id]));
  const rows = await db.prisma.auditEntry.findMany({
    where: { entity: 'case', entityId: id, ...(after && { id: { lt: after[0] } }) },
    orderBy: { id: 'desc' },
    take: limit + 1,
  });
  const { items, next } = toPage(rows, limit, (row) => [row.id]);
  return {
    items: items.map(({ actorId: _, at, before, after, ...row }) => ({
      ...row,
      at: at.toISOString(),
      before: before as AuditEntry['before'],
      after: after as AuditEntry['after'],
    })),
    next,
  };
}
