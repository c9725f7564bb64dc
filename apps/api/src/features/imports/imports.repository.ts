import type { z } from 'zod';
import { type Actor, plantsWith } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { changedMeanwhile, notFound } from '#api/platform/problems.ts';
import type { ImportState, Progress } from '#contracts/imports.ts';
import { Id } from '#contracts/shared/scalars.ts';
import type { Database, Tx } from '#db/client.ts';
import type { ImportJob, Prisma } from '#db/generated/client.ts';
import { execute, sql, txExecute } from '#db/sql.ts';
import type { Client } from './imports.queries.ts';
import type { SavedMeaning } from './interpret/known-values.ts';
import { SavedMapping, type StoredResult } from './stored.ts';

type Kind = ImportJob['kind'];
type Reader = Pick<Tx, 'importJob' | 'importMapping' | 'importValue' | 'person' | 'apiToken'>;

/** The own imports; for those who read imports of all plants, everybody's. */
const visible = (actor: Actor): Prisma.ImportJobWhereInput =>
  plantsWith(actor, 'imports.read') === 'all' ? {} : { createdBy: actor.id };

export async function findJob(db: Reader, actor: Actor, id: string): Promise<ImportJob> {
  const job = await db.importJob.findFirst({ where: { id, ...visible(actor) } });
  if (!job) throw notFound('import');
  return job;
}

export async function listJobs(
  db: Reader,
  actor: Actor,
  query: { cursor?: string | undefined; limit: number; kind?: Kind | undefined },
) {
  const after = decodeCursor(query.cursor, Id.array().length(1));
  const jobs = await db.importJob.findMany({
    where: { ...visible(actor), ...(query.kind && { kind: query.kind }), ...(after && { id: { lt: after[0]! } }) },
    orderBy: { id: 'desc' },
    take: query.limit + 1,
  });
  return toPage(jobs, query.limit, ({ id }) => [id]);
}

/** Names of people and tokens by id. */
export async function namesOf(db: Reader, ids: readonly string[]): Promise<Map<string, string>> {
  const among = { where: { id: { in: [...new Set(ids)] } }, select: { id: true, name: true } };
  const rows = [...(await db.person.findMany(among)), ...(await db.apiToken.findMany(among))];
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** Changes the job if it still has the version that was read. */
export async function saveJob(
  tx: Tx,
  { id }: ImportJob,
  version: number,
  data: Prisma.ImportJobUncheckedUpdateManyInput,
): Promise<ImportJob> {
  const { count } = await tx.importJob.updateMany({
    where: { id, version },
    data: { ...data, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  return tx.importJob.findUniqueOrThrow({ where: { id } });
}

export async function findSavedMapping(db: Reader, kind: Kind, source: string): Promise<SavedMapping | null> {
  const row = await db.importMapping.findUnique({ where: { kind_source: { kind, source } } });
  return row && (SavedMapping.safeParse(row.mapping).data ?? null);
}

export async function saveMapping(
  tx: Tx,
  kind: Kind,
  source: string,
  mapping: z.input<typeof SavedMapping>,
  at: Date,
): Promise<void> {
  const data = { mapping, updatedAt: at };
  await tx.importMapping.upsert({
    where: { kind_source: { kind, source } },
    create: { kind, source, ...data },
    update: data,
  });
}

export const findMeanings = (db: Reader, kind: Kind, source: string): Promise<SavedMeaning[]> =>
  db.importValue.findMany({ where: { kind, source }, select: { field: true, plantId: true, raw: true, target: true } });

export const saveMeaning = (
  tx: Tx,
  kind: Kind,
  source: string,
  { field, plantId, raw, target }: SavedMeaning,
  at: Date,
): Promise<number> =>
  txExecute(
    tx,
    sql`insert into import_value (kind, source, field, plant_id, raw, target, updated_at)
      values (${kind}::import_kind, ${source}, ${field}, ${plantId}::uuid, ${raw}, ${target}, ${at}::timestamptz)
      on conflict (kind, source, field, plant_id, raw) do update set target = excluded.target, updated_at = excluded.updated_at`,
  );

export interface JobEnd {
  state: ImportState;
  result: StoredResult;
  progress: Progress;
  finishedAt: Date | null;
}

/** Ends a run, in the transaction of what it wrote. */
export const endJob = (
  client: Client | Database['pool'],
  id: string,
  { state, result, progress, finishedAt }: JobEnd,
): Promise<number> =>
  execute(
    client,
    sql`update import_job set state = ${state}::import_state, result = ${JSON.stringify(result)}::jsonb, progress = ${JSON.stringify(progress)}::jsonb,
        finished_at = ${finishedAt}::timestamptz, version = version + 1
      where id = ${id}::uuid`,
  );

export const saveProgress = (db: Database, id: string, progress: Progress): Promise<number> =>
  execute(
    db.pool,
    sql`update import_job set progress = ${JSON.stringify(progress)}::jsonb where id = ${id}::uuid and state in ('checking', 'committing')`,
  );

/** Runs that a stopped service left behind; their transactions are gone with it. */
export const markInterrupted = (db: Database): Promise<number> =>
  execute(
    db.pool,
    sql`update import_job set state = 'interrupted', version = version + 1, result = jsonb_set(result, '{trouble}', '{"code": "interrupted", "place": null}')
      where state in ('checking', 'committing')`,
  );
