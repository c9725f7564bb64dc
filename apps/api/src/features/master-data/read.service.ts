import { type Actor, choosePlants, holds } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { notFound } from '#api/platform/problems.ts';
import type { Database, Tx } from '#db/client.ts';
import { behind, cursorOf, orderBy, sortValues } from './keyset.ts';
import type { Fields, Kind, Row } from './kind.ts';
import { toRow } from './stored.ts';

export interface ListQuery {
  cursor?: string | undefined;
  limit: number;
  retired: boolean;
  q?: string | undefined;
  plant?: string[] | undefined;
  due?: boolean | undefined;
}

const nameOf = (kind: Kind): string => kind.contract.entity.replaceAll('_', ' ');
export const noSuch = (kind: Kind) => notFound(nameOf(kind));

async function shown(tx: Tx, kind: Kind, stored: Fields[]): Promise<Row[]> {
  const rows = await kind.complete(
    tx,
    stored.map((row) => toRow(kind, row)),
  );
  return rows as unknown as Row[];
}

/** One row, whoever asks. */
export async function find(tx: Tx, kind: Kind, id: string): Promise<Row> {
  const [row] = await shown(tx, kind, await kind.table(tx).findMany({ where: { id } }));
  if (!row) throw noSuch(kind);
  return row;
}

/** `%` and `_` are meant as themselves. */
const literal = (text: string): string => text.replace(/[\\%_]/g, '\\$&');

function scopeOf(kind: Kind, actor: Actor, asked: string[] | undefined): object {
  if (kind.contract.scope === 'group') return {};
  const plants = choosePlants(actor, 'masterData.read', asked);
  return plants === 'all' ? {} : { [kind.contract.name === 'plants' ? 'id' : 'plantId']: { in: plants } };
}

export async function list(db: Database, kind: Kind, actor: Actor, query: ListQuery) {
  const after = decodeCursor(query.cursor, cursorOf(kind.order));
  const contains = { contains: literal(query.q ?? ''), mode: 'insensitive' };
  const stored = await kind.table(db.prisma).findMany({
    where: {
      AND: [
        scopeOf(kind, actor, query.plant),
        query.retired ? {} : { retiredAt: null },
        query.due === undefined ? {} : { due: query.due },
        query.q ? { OR: kind.search.map((field) => ({ [field]: contains })) } : {},
        after ? behind(kind.order, after) : {},
      ],
    },
    orderBy: orderBy(kind.order),
    take: query.limit + 1,
  });
  const { items, next } = toPage(stored, query.limit, (row) => sortValues(kind.order, row));
  return { items: await shown(db.prisma, kind, items), next };
}

export async function read(db: Database, kind: Kind, actor: Actor, id: string): Promise<Row> {
  const row = await find(db.prisma, kind, id);
  const plantId = kind.plantOf(row as unknown as Fields);
  if (plantId !== null && !holds(actor, 'masterData.read', plantId)) throw noSuch(kind);
  return row;
}
