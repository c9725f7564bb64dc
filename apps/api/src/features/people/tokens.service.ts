import { z } from 'zod';
import { recordChange } from '#api/platform/audit.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { newId } from '#api/platform/ids.ts';
import { hashSecret, newSecret } from '#api/platform/passwords.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Grant, Token } from '#contracts/people.ts';
import type { Database, Tx } from '#db/client.ts';
import { replaceGrants } from './people.repository.ts';

async function toTokens(tx: Tx, rows: Awaited<ReturnType<Tx['apiToken']['findMany']>>): Promise<Token[]> {
  const grants = await tx.roleGrant.findMany({
    where: { tokenId: { in: rows.map(({ id }) => id) } },
    orderBy: { id: 'asc' },
  });
  const people = await tx.person.findMany({
    where: { id: { in: rows.map(({ createdBy }) => createdBy) } },
    select: { id: true, name: true },
  });
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    createdAt: row.createdAt.toISOString(),
    expiresAt: row.expiresAt?.toISOString() ?? null,
    revokedAt: row.revokedAt?.toISOString() ?? null,
    lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
    createdBy: people.find(({ id }) => id === row.createdBy)?.name ?? '',
    grants: grants.filter(({ tokenId }) => tokenId === row.id).map(({ role, plantId }) => ({ role, plantId })),
  }));
}

export async function listTokens(db: Database, query: { cursor?: string | undefined; limit: number }) {
  const after = decodeCursor(query.cursor, z.tuple([z.uuid()]));
  const rows = await db.prisma.apiToken.findMany({
    where: after ? { id: { lt: after[0] } } : {},
    orderBy: { id: 'desc' },
    take: query.limit + 1,
  });
  const { items, next } = toPage(rows, query.limit, (row) => [row.id]);
  return { items: await toTokens(db.prisma, items), next };
}

/** The secret leaves once, here; only its hash is kept. */
export async function createToken(
  unit: Unit,
  input: { name: string; grants: Grant[]; expiresAt: string | null },
): Promise<{ token: Token; secret: string }> {
  if (unit.actor.kind !== 'person') throw problem('not_allowed', 'A token cannot make tokens. Sign in as a person.');
  if (input.expiresAt && new Date(input.expiresAt) <= unit.at)
    throw problem('not_consistent', 'The token would have expired already. Choose a later day.', [
      { path: 'body/expiresAt', message: 'must lie ahead' },
    ]);
  const id = newId();
  const secret = newSecret();
  const row = await unit.tx.apiToken.create({
    data: {
      id,
      name: input.name,
      secretHash: hashSecret(secret),
      createdBy: unit.actor.id,
      createdAt: unit.at,
      expiresAt: input.expiresAt,
    },
  });
  await replaceGrants(unit.tx, { tokenId: id }, input.grants);
  const token = (await toTokens(unit.tx, [row]))[0] as Token;
  await recordChange(unit, {
    action: 'created',
    entity: 'token',
    entityId: id,
    label: input.name,
    plantId: null,
    before: null,
    after: token,
  });
  return { token, secret };
}

export async function revokeToken(unit: Unit, id: string): Promise<void> {
  const row = await unit.tx.apiToken.findUnique({ where: { id } });
  if (!row) throw notFound('token');
  if (row.revokedAt) return;
  await unit.tx.apiToken.update({ where: { id }, data: { revokedAt: unit.at } });
  await recordChange(unit, {
    action: 'revoked',
    entity: 'token',
    entityId: id,
    label: row.name,
    plantId: null,
    before: null,
    after: null,
  });
}
