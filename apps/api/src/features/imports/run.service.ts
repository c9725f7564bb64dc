/** Runs a dry run or an import in the background and keeps what became of it. */
import { rm } from 'node:fs/promises';
import type { FastifyInstance } from 'fastify';
import { type Actor, plantsWith } from '#api/platform/actor.ts';
import type { Progress, Trouble } from '#contracts/imports.ts';
import { Mapping } from '#contracts/imports.ts';
import type { ImportJob } from '#db/generated/client.ts';
import { FileFault } from './file-fault.ts';
import { endJob, findMeanings, saveProgress } from './imports.repository.ts';
import { type ImportRun, type RunResult, runImport } from './run/run-import.ts';
import { Stopped } from './runner.ts';
import { nothingYet, StoredFile, StoredResult } from './stored.ts';
import { refusedPath } from './upload.ts';

export interface Order {
  job: ImportJob;
  actor: Actor;
  at: Date;
  mode: ImportRun['mode'];
  skipRefused: boolean;
}
type App = Pick<FastifyInstance, 'db' | 'config' | 'clock' | 'log'>;

const progressEvery = 400;
const ended = (rows: number): Progress => ({ phase: 'done', share: 1, rows });

export async function perform(app: App, order: Order, signal: AbortSignal): Promise<void> {
  const { db } = app;
  const { job } = order;
  const before = StoredResult.parse(job.result);
  let written = 0;
  const progress = (now: Progress) => {
    if (performance.now() - written < progressEvery) return;
    written = performance.now();
    saveProgress(db, job.id, now).catch((error) => app.log.warn(error));
  };
  try {
    signal.throwIfAborted();
    const run = await runOf(app, order, before, signal, progress);
    const result = await runImport(db, run, async (client, result) => {
      const state = stateAfter(order.mode, result);
      const finishedAt = state === 'committed' ? app.clock() : null;
      await endJob(client, job.id, {
        state,
        finishedAt,
        result: resultOf(order.mode, before, result),
        progress: ended(result.questions ? 0 : result.outcome.rows),
      });
    });
    if (stateAfter(order.mode, result) === 'committed') await rm(job.filePath, { force: true });
  } catch (error) {
    const trouble = troubleOf(error, job.id);
    if (trouble.code === 'internal') app.log.error(error);
    const state = trouble.code === 'interrupted' ? 'interrupted' : trouble.code === 'stopped' ? 'uploaded' : 'failed';
    await endJob(db.pool, job.id, {
      state,
      finishedAt: null,
      result: { ...before, outcome: null, trouble },
      progress: ended(0),
    });
  }
}

async function runOf(
  { db, config }: App,
  { job, actor, at, mode, skipRefused }: Order,
  before: StoredResult,
  signal: AbortSignal,
  progress: ImportRun['progress'],
): Promise<ImportRun> {
  const scope = plantsWith(actor, 'imports.run');
  const { kind, source, fileName, sha256 } = job;
  return {
    mode,
    skipRefused,
    kind,
    path: job.filePath,
    refusedPath: refusedPath(config.importDir, job.id),
    file: StoredFile.parse(job.format),
    mapping: Mapping.parse(job.mapping),
    ways: mode === 'commit' ? before.ways : null,
    meanings: await findMeanings(db.prisma, kind, source),
    plantIds: scope === 'all' ? null : scope,
    locale: actor.locale === 'de' ? 'de' : 'en',
    doer: {
      importId: job.id,
      at,
      actorId: actor.id,
      actor: actor.name,
      personId: actor.kind === 'person' ? actor.id : null,
    },
    audit: { kind, source, fileName, sha256 },
    signal,
    progress,
  };
}

function stateAfter(mode: ImportRun['mode'], result: RunResult): 'uploaded' | 'checked' | 'committed' {
  if (result.questions) return 'uploaded';
  return mode === 'commit' && result.written ? 'committed' : 'checked';
}

function resultOf(mode: ImportRun['mode'], before: StoredResult, result: RunResult): StoredResult {
  if (result.questions) return { ...nothingYet, questions: result.questions, ways: before.ways };
  const { ways, unknown, unknownLeftOut, outcome } = result;
  const trouble: Trouble | null = mode === 'commit' && !result.written ? { code: 'rows_refused', place: null } : null;
  return { questions: [], unknown, unknownLeftOut, ways, outcome, trouble };
}

function troubleOf(error: unknown, jobId: string): Trouble {
  if (error instanceof Stopped) return { code: error.code, place: null };
  if (error instanceof FileFault) return { code: error.code, place: error.place };
  const { code } = error as { code?: unknown };
  if (typeof code === 'string' && /^(23|40)[0-9A-Z]{3}$/.test(code)) return { code: 'conflict', place: null };
  return { code: 'internal', place: jobId };
}
