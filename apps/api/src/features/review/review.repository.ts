import { newId } from '#api/platform/ids.ts';
import type { Database, Tx } from '#db/client.ts';
import type { Kept } from './frozen.rules.ts';
import { type Scope, scopeKept } from './scope.rules.ts';

type Reader = Tx | Database['prisma'];
export type Row = NonNullable<Awaited<ReturnType<typeof findReview>>>;

const dayAt = (day: string) => new Date(`${day}T00:00:00Z`);
export const weekOfRow = ({ weekFrom }: { weekFrom: Date }) => weekFrom.toISOString().slice(0, 10);

export const findReview = (tx: Reader, id: string) => tx.review.findUnique({ where: { id } });

/** Every edition of one review, newest first. */
export const findEditions = (tx: Reader, scope: string, weekFrom: string) =>
  tx.review.findMany({ where: { scope, weekFrom: dayAt(weekFrom) }, orderBy: { edition: 'desc' } });

export interface NewReview {
  scope: Scope;
  weekFrom: string;
  edition: number;
  reason: string | null;
  kept: Kept;
  at: Date;
  /** null: by the clock */
  by: string | null;
}

export const addReview = (tx: Tx, { scope, weekFrom, edition, reason, kept, at, by }: NewReview) =>
  tx.review.create({
    data: {
      id: newId(),
      scope: scope.key,
      plantIds: [...scope.plantIds],
      weekFrom: dayAt(weekFrom),
      edition,
      reason,
      ...kept,
      figuresAt: at,
      openedAt: at,
      openedBy: by,
    },
  });

interface Changes extends Partial<Kept> {
  figuresAt?: Date;
  closedAt?: Date;
  closedBy?: string;
}

/** Changes an open review that still has the version, or false. */
export async function changeOpen(
  tx: Tx,
  { id, version }: Pick<Row, 'id' | 'version'>,
  data: Changes,
): Promise<boolean> {
  const { count } = await tx.review.updateMany({
    where: { id, version, closedAt: null },
    data: { ...data, version: { increment: 1 } },
  });
  return count === 1;
}

export const scopeOfRow = (row: Pick<Row, 'scope' | 'plantIds'>): Scope => scopeKept(row);
