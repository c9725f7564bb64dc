import { createHash } from 'node:crypto';
import type { Database, Tx } from '#db/client.ts';
import type { Actor } from './actor.ts';
import { problem } from './problems.ts';

/** One unit of work: a transaction, who does it, and when. */
export interface Unit {
  tx: Tx;
  actor: Actor;
  at: Date;
}

export interface UnitOptions {
  actor: Actor;
  at: Date;
  /** The request's Idempotency-Key and what it asked, so that a repeat gets the first answer and changes nothing. */
  idempotency?: { key: string; request: unknown } | undefined;
}

/** Runs the work in one transaction. Under an Idempotency-Key a repeat waits for the first and returns its answer. */
export async function runUnit<Result>(
  db: Database,
  { actor, at, idempotency }: UnitOptions,
  work: (unit: Unit) => Promise<Result>,
): Promise<Result> {
  return db.prisma.$transaction(async (tx) => {
    if (!idempotency) return work({ tx, actor, at });
    const requestHash = createHash('sha256').update(JSON.stringify(idempotency.request)).digest('base64url');
    const id = { actorId: actor.id, key: idempotency.key };
    const { count } = await tx.idempotencyKey.createMany({
      data: [{ ...id, requestHash, status: 0, createdAt: at }],
      skipDuplicates: true,
    });
    if (count === 0) {
      const first = await tx.idempotencyKey.findUniqueOrThrow({ where: { actorId_key: id } });
      if (first.requestHash !== requestHash)
        throw problem('key_reused', 'Send a new Idempotency-Key with a new request.');
      return first.response as Result;
    }
    const result = await work({ tx, actor, at });
    await tx.idempotencyKey.update({
      where: { actorId_key: id },
      data: { status: 1, response: (result ?? null) as object },
    });
    return result;
  });
}
