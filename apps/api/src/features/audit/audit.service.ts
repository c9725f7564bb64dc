import { z } from 'zod';
import { type Actor, choosePlants } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import type { AuditEntry, listAudit } from '#contracts/audit.ts';
import type { Database } from '#db/client.ts';

type Query = z.output<NonNullable<typeof listAudit.query>>;

const literal = (text: string): string => text.replace(/[\\%_]/g, '\\$&');

/** Newest first. Changes of the group's own rows are for those who hold the permission for all plants. */
export async function readTrail(db: Database, actor: Actor, query: Query) {
  const plants = choosePlants(actor, 'audit.read', query.plant);
  const after = decodeCursor(query.cursor, z.tuple([z.uuid()]));
  const rows = await db.prisma.auditEntry.findMany({
    where: {
      ...(plants !== 'all' && { plantId: { in: [...plants] } }),
      ...(query.entity?.length && { entity: { in: query.entity } }),
      ...(query.entityId && { entityId: query.entityId }),
      ...(query.actor && { actor: { contains: literal(query.actor), mode: 'insensitive' } }),
      at: { ...(query.from && { gte: new Date(query.from) }), ...(query.to && { lt: new Date(query.to) }) },
      ...(after && { id: { lt: after[0] } }),
    },
    orderBy: { id: 'desc' },
    take: query.limit + 1,
  });
  const { items, next } = toPage(rows, query.limit, (row) => [row.id]);
  return {
    items: items.map(
      ({ actorId: _, at, before, after, ...row }): AuditEntry => ({
        ...row,
        at: at.toISOString(),
        before: before as AuditEntry['before'],
        after: after as AuditEntry['after'],
      }),
    ),
    next,
  };
}
