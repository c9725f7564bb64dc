import { rm } from 'node:fs/promises';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { type Actor, plantsWith } from '#api/platform/actor.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import { importTerms } from '#contracts/import-terms.en.ts';
import type { Import, ImportSummary, Layout, ValueMeaning } from '#contracts/imports.ts';
import { Mapping } from '#contracts/imports.ts';
import type { ImportJob } from '#db/generated/client.ts';
import { FileFault } from './file-fault.ts';
import { detectLayout } from './formats/open-file.ts';
import { listSheets } from './formats/xlsx.ts';
import { loadReferences } from './imports.queries.ts';
import * as jobs from './imports.repository.ts';
import { inspectFile, proposeMapping } from './inspect.ts';
import { fold, foldCode } from './interpret/fold.ts';
import { mappingErrors, missingFields } from './mapping-check.rules.ts';
import { presentImport, presentSummary } from './present.ts';
import { perform } from './run.service.ts';
import type { Runner } from './runner.ts';
import { nothingYet, StoredFile, StoredResult } from './stored.ts';
import { receiveFile, refusedPath } from './upload.ts';
import { defineValue } from './values.service.ts';

export type App = Pick<FastifyInstance, 'db' | 'config' | 'clock' | 'log'>;
type Kind = ImportJob['kind'];

const waiting = { phase: 'waiting', share: 0, rows: 0 } as const;
const changeable = ['uploaded', 'checked', 'failed', 'interrupted'];

async function present(app: App, job: ImportJob): Promise<Import> {
  const names = await jobs.namesOf(app.db.prisma, [job.createdBy]);
  return presentImport(job, names.get(job.createdBy) ?? '');
}

export async function listImports(
  app: App,
  actor: Actor,
  query: { cursor?: string | undefined; limit: number; kind?: Kind | undefined },
) {
  const { items, next } = await jobs.listJobs(app.db.prisma, actor, query);
  const names = await jobs.namesOf(
    app.db.prisma,
    items.map(({ createdBy }) => createdBy),
  );
  return { items: items.map((job): ImportSummary => presentSummary(job, names.get(job.createdBy) ?? '')), next };
}

export const readImport = async (app: App, actor: Actor, id: string): Promise<Import> =>
  present(app, await jobs.findJob(app.db.prisma, actor, id));

/** The file on disk and what can be told about it; the job itself is written by `addImport`. */
export async function receive(
  app: App,
  actor: Actor,
  request: FastifyRequest,
  { kind, source }: { kind: Kind; source: string },
) {
  const id = newId();
  const uploaded = await receiveFile(request, app.config.importDir, id);
  try {
    const references = await referencesOf(app, actor);
    const file = await readable(async () =>
      inspectFile(kind, uploaded.path, await detectLayout(uploaded.path), null, references),
    );
    const plants = references.filter(({ of }) => of === 'plant');
    const mapping = proposeMapping(
      file,
      await jobs.findSavedMapping(app.db.prisma, kind, source),
      plants.length === 1 ? plants[0]!.code : null,
    );
    return { id, kind, source, uploaded, file, mapping };
  } catch (error) {
    await rm(uploaded.path, { force: true });
    throw error;
  }
}

export async function addImport(
  { tx, actor, at }: Unit,
  { id, kind, source, uploaded, file, mapping }: Awaited<ReturnType<typeof receive>>,
): Promise<Import> {
  const { path: filePath, fileName, sha256, bytes } = uploaded;
  const job = await tx.importJob.create({
    data: {
      id,
      kind,
      state: 'uploaded',
      source,
      fileName,
      filePath,
      sha256,
      bytes,
      format: file,
      mapping,
      progress: waiting,
      result: nothingYet,
      createdBy: actor.id,
      createdAt: at,
    },
  });
  return presentImport(job, actor.name);
}

export async function changeLayoutOf(
  app: App,
  actor: Actor,
  id: string,
  version: number,
  { layout, headerLine }: { layout: Layout; headerLine: number | null },
): Promise<Import> {
  const job = await openJob(app, actor, id, version);
  const before = StoredFile.parse(job.format);
  if (layout.format !== before.layout.format)
    throw problem('not_consistent', 'A file stays what it is, text or workbook. Upload another file instead.', [
      { path: 'body/layout/format', message: 'cannot change' },
    ]);
  const settled =
    layout.format === 'xlsx' ? { ...layout, sheets: await readable(() => listSheets(job.filePath)) } : layout;
  const file = await readable(async () =>
    inspectFile(job.kind, job.filePath, settled, headerLine, await referencesOf(app, actor)),
  );
  const saved = await jobs.findSavedMapping(app.db.prisma, job.kind, job.source);
  const data = {
    format: file,
    mapping: proposeMapping(file, saved, null),
    result: nothingYet,
    state: 'uploaded',
    progress: waiting,
  } as const;
  return present(app, await app.db.prisma.$transaction((tx) => jobs.saveJob(tx, job, version, data)));
}

export async function changeMapping(
  app: App,
  { tx, actor, at }: Unit,
  id: string,
  version: number,
  mapping: Mapping,
): Promise<Import> {
  const job = await openJob(app, actor, id, version);
  const file = StoredFile.parse(job.format);
  const errors = mappingErrors(job.kind, mapping, file.columns.length);
  if (errors.length > 0)
    throw problem(
      'not_consistent',
      `${errors.map((it) => `${it.path} ${it.message}`).join('; ')}. Nothing was changed.`,
      errors,
    );
  const { columns, ...kept } = mapping;
  const fieldOf = Object.fromEntries(file.columns.map(({ header }, column) => [fold(header), columns[column] ?? null]));
  await jobs.saveMapping(tx, job.kind, job.source, { ...kept, fieldOf }, at);
  return present(
    app,
    await jobs.saveJob(tx, job, version, { mapping, result: nothingYet, state: 'uploaded', progress: waiting }),
  );
}

export async function defineValues(
  app: App,
  unit: Unit,
  id: string,
  version: number,
  values: readonly z.output<typeof ValueMeaning>[],
): Promise<Import> {
  const job = await openJob(app, unit.actor, id, version);
  for (const [index, value] of values.entries()) await defineValue(unit, job, value, `body/values/${index}`);
  const result = StoredResult.parse(job.result);
  const keyOf = (it: { field: string; plantId: string | null; raw: string }) =>
    `${it.field} ${it.plantId} ${foldCode(it.raw)}`;
  const defined = new Set(values.map(keyOf));
  const unknown = result.unknown.filter((it) => !defined.has(keyOf(it)));
  return present(
    app,
    await jobs.saveJob(unit.tx, job, version, {
      result: { ...result, unknown, outcome: null },
      state: 'uploaded',
      progress: waiting,
    }),
  );
}

/** Begins a dry run or an import; what becomes of it is read from the import itself. */
export async function begin(
  app: App,
  runner: Runner,
  actor: Actor,
  at: Date,
  id: string,
  version: number,
  order: { mode: 'check' | 'commit'; skipRefused: boolean },
): Promise<Import> {
  const open = await openJob(app, actor, id, version);
  const missing = missingFields(open.kind, Mapping.parse(open.mapping));
  if (missing.length > 0) {
    const names = missing.map((field) => importTerms.field[field]).join(', ');
    throw problem(
      'not_consistent',
      `Say first which column holds, or which value is to stand for: ${names}.`,
      missing.map((field) => ({ path: `mapping/${field}`, message: 'is required' })),
    );
  }
  if (order.mode === 'commit') requireChecked(open, order.skipRefused);
  const state = order.mode === 'check' ? 'checking' : 'committing';
  const job = await app.db.prisma.$transaction((tx) => jobs.saveJob(tx, open, version, { state, progress: waiting }));
  runner.start(id, (signal) => perform(app, { job, actor, at, ...order }, signal));
  return present(app, job);
}

/** Running: stopped, and as it was before. Waiting for a person: given up, and the file removed. */
export async function cancel(app: App, runner: Runner, actor: Actor, id: string): Promise<Import> {
  await jobs.findJob(app.db.prisma, actor, id);
  if (await runner.stop(id)) return readImport(app, actor, id);
  const job = await jobs.findJob(app.db.prisma, actor, id);
  if (!changeable.includes(job.state)) throw conflict(job);
  const data = { state: 'cancelled', finishedAt: app.clock() } as const;
  const saved = await app.db.prisma.$transaction((tx) => jobs.saveJob(tx, job, job.version, data));
  await Promise.all([job.filePath, refusedPath(app.config.importDir, id)].map((path) => rm(path, { force: true })));
  return present(app, saved);
}

function requireChecked(job: ImportJob, skipRefused: boolean): void {
  const { outcome } = StoredResult.parse(job.result);
  if (job.state !== 'checked' || !outcome)
    throw problem('conflict', 'Check the file first, so that everybody knows what the import will do.');
  if (outcome.refused > 0 && !skipRefused)
    throw problem(
      'conflict',
      `${outcome.refused} rows are refused. Mend them and upload the file again, or send skipRefused to leave them out.`,
    );
  if (outcome.added + outcome.changed === 0)
    throw problem('conflict', 'The file holds nothing new: every row is here already or refused.');
}

async function openJob(app: App, actor: Actor, id: string, version: number): Promise<ImportJob> {
  const job = await jobs.findJob(app.db.prisma, actor, id);
  if (!changeable.includes(job.state)) throw conflict(job);
  if (job.version !== version) throw changed();
  return job;
}

const changed = () => problem('changed_meanwhile', 'Load the import again and repeat your change.');
const conflict = ({ state }: ImportJob) =>
  problem(
    'conflict',
    state === 'committed' || state === 'cancelled'
      ? 'This import is finished. Upload the file again for another one.'
      : 'It is running. Wait until it has ended, or stop it first.',
  );

function referencesOf(app: App, actor: Actor) {
  const scope = plantsWith(actor, 'imports.run');
  return loadReferences(app.db.pool, scope === 'all' ? null : scope);
}

async function readable<Result>(work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof FileFault ? problem('unreadable_file', error.message) : error;
  }
}
