import type { Actor } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Database } from '#db/client.ts';

const most = 200;
const select = { id: true, page: true, name: true, query: true } as const;

function requirePerson(actor: Actor): void {
  if (actor.kind !== 'person')
    throw problem('not_allowed', 'Saved filters belong to people. Sign in as a person to keep one.');
}

export const listSavedFilters = (db: Database, actor: Actor) =>
  db.prisma.savedFilter.findMany({
    where: { personId: actor.id },
    select,
    orderBy: [{ page: 'asc' }, { name: 'asc' }],
    take: most,
  });

export async function saveFilter(unit: Unit, filter: { page: string; name: string; query: string }) {
  requirePerson(unit.actor);
  const personId = unit.actor.id;
  const { page, name, query } = filter;
  if ((await unit.tx.savedFilter.count({ where: { personId } })) >= most)
    throw problem('conflict', `No more than ${most} filters can be kept. Remove one that is no longer used.`);
  const where = { personId_page_name: { personId, page, name } };
  const before = await unit.tx.savedFilter.findUnique({ where, select });
  const after = await unit.tx.savedFilter.upsert({
    where,
    create: { id: newId(), personId, page, name, query },
    update: { query },
    select,
  });
  await recordSaved(unit, before ? 'changed' : 'saved', before, after);
  return after;
}

export async function deleteSavedFilter(unit: Unit, id: string): Promise<void> {
  requirePerson(unit.actor);
  const before = await unit.tx.savedFilter.findFirst({ where: { id, personId: unit.actor.id }, select });
  if (!before) throw notFound('saved filter');
  await unit.tx.savedFilter.delete({ where: { id } });
  await recordSaved(unit, 'removed', before, null);
}

interface Saved {
  id: string;
  name: string;
}
async function recordSaved(unit: Unit, action: string, before: Saved | null, after: Saved | null): Promise<void> {
  const { id, name } = (after ?? before)!;
  await recordChange(unit, { action, entity: 'saved filter', entityId: id, label: name, plantId: null, before, after });
}
