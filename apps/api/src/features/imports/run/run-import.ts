/** The one way through a file: a dry run and an import differ only in their last step. */
import { once } from 'node:events';
import { finished } from 'node:stream/promises';
import QueryStream from 'pg-query-stream';
import type { z } from 'zod';
import { importTerms } from '#contracts/import-terms.ts';
import type { Mapping, Outcome, Progress, Question, UnknownValue } from '#contracts/imports.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import type { ImportKind } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import type { Client } from '../imports.queries.ts';
import * as queries from '../imports.queries.ts';
import type { Ways } from '../interpret/column-evidence.ts';
import type { SavedMeaning } from '../interpret/known-values.ts';
import { kinds } from '../kinds/all.ts';
import type { StoredFile } from '../stored.ts';
import { type RefusedTotals, writeRefusedRows } from './refused-rows.ts';
import type { StageResult, StageTask } from './stage-file.ts';
import { stageInWorker } from './stage-in-worker.ts';

export interface ImportRun {
  /** `check` writes nothing; `commit` writes all rows that are not refused, or none where `skipRefused` is false and one is. */
  mode: 'check' | 'commit';
  skipRefused: boolean;
  kind: z.infer<typeof ImportKind>;
  path: string;
  refusedPath: string;
  file: StoredFile;
  mapping: Mapping;
  ways: Ways | null;
  meanings: SavedMeaning[];
  /** Plants whose rows may be imported; null for all. */
  plantIds: readonly string[] | null;
  locale: Locale;
  doer: queries.Doer;
  audit: { kind: string; fileName: string; source: string; sha256: string };
  signal: AbortSignal;
  progress(progress: Progress): void;
}
export type RunResult =
  | { questions: Question[] }
  | {
      questions: null;
      ways: Ways;
      unknown: UnknownValue[];
      unknownLeftOut: number;
      outcome: Outcome;
      written: boolean;
    };

/**
 * Reads the file, compares it with what there is, and in mode `commit` writes it, all in one transaction with `record`.
 * Throws `FileFault`, the signal's reason, or a database error; then nothing is written.
 */
export async function runImport(
  db: Database,
  run: ImportRun,
  record: (client: Client, result: RunResult) => Promise<void>,
): Promise<RunResult> {
  const client = await db.pool.connect();
  const backend = (client as unknown as { processID: number }).processID;
  const cancel = () => void db.pool.query('select pg_cancel_backend($1)', [backend]).catch(() => {});
  run.signal.addEventListener('abort', cancel, { once: true });
  try {
    const staged = await stage(client, run);
    await client.query('begin');
    if (run.mode === 'commit') await queries.lockImports(client, run.kind);
    run.progress({ phase: 'comparing', share: 0.75, rows: staged.asked ? 0 : staged.rows });
    const result = staged.asked ? { questions: staged.asked } : await judge(client, run, staged);
    if (run.mode === 'commit' && !result.questions && (run.skipRefused || result.outcome.refused === 0)) {
      run.progress({ phase: 'writing', share: 0.8, rows: result.outcome.rows });
      await write(client, run);
      result.written = true;
    }
    await record(client, result);
    run.signal.throwIfAborted();
    await client.query('commit');
    return result;
  } catch (error) {
    await client.query('rollback').catch(() => {});
    throw run.signal.aborted ? run.signal.reason : error;
  } finally {
    run.signal.removeEventListener('abort', cancel);
    client.release(true);
  }
}

/** The rows of the file that can be read, into `import_row`. */
async function stage(client: Client, run: ImportRun): Promise<StageResult> {
  await queries.makeStaging(client, kinds[run.kind].columns);
  const { layout, headerLine, columns: heads } = run.file;
  const task: StageTask = {
    ...pick(run),
    layout,
    headerLine,
    headers: heads.map(({ header }) => header),
    references: await queries.loadReferences(client, run.plantIds),
    rates: await queries.loadRates(client),
    groupCurrency: await queries.loadGroupCurrency(client),
    today: (await queries.loadToday(client, run.doer.at)).map(({ id, day }) => [id, day]),
  };
  const copy = queries.copyIntoStaging(client);
  const copied = finished(copy);
  const scans = run.ways === null;
  try {
    const result = await stageInWorker(task, {
      signal: run.signal,
      lines: async (bytes) => {
        if (!copy.write(bytes)) await Promise.race([once(copy, 'drain'), copied]);
      },
      progress: (phase, share, rows) =>
        run.progress({
          phase,
          rows,
          share: phase === 'scanning' ? share * 0.3 : scans ? 0.3 + share * 0.4 : share * 0.7,
        }),
    });
    copy.end();
    await copied;
    await queries.analyseStaging(client);
    return result;
  } catch (error) {
    copy.destroy(error as Error);
    await copied.catch(() => {});
    throw error;
  }
}

async function judge(
  client: Client,
  run: ImportRun,
  staged: Exclude<StageResult, { asked: Question[] }>,
): Promise<RunResult> {
  const questions = await kinds[run.kind].judge(client, run.mapping);
  if (questions.length > 0) return { questions };
  const refused = await refuseVerdicts(client, run, staged.refused);
  const outcome = summarise(await queries.tallyVerdicts(client), staged.rows, refused);
  const { ways, unknown, unknownLeftOut } = staged;
  return { questions: null, ways, unknown, unknownLeftOut, outcome, written: false };
}

/** Adds the rows that only the comparison refuses to the file of refused rows. */
async function refuseVerdicts(client: Client, run: ImportRun, begun: RefusedTotals): Promise<RefusedTotals> {
  const refused = writeRefusedRows(run.refusedPath, run.locale, begun);
  const column = importTerms[run.locale].field[kinds[run.kind].comparedBy];
  for await (const { line, rows, reason, value, note } of client.query(new QueryStream(queries.refusedVerdicts))) {
    refused.add([{ line, column, value: value ?? '', reason, note }], rows);
    await refused.flush();
  }
  return refused.end();
}

function summarise(tallies: readonly queries.Tally[], rows: number, refused: RefusedTotals): Outcome {
  const count = (verdict: queries.Tally['verdict'], plantId?: string) =>
    tallies
      .filter((it) => it.verdict === verdict && (!plantId || it.plantId === plantId))
      .reduce((sum, it) => sum + it.rows, 0);
  const plantIds = [...new Set(tallies.map(({ plantId }) => plantId))];
  return {
    rows,
    added: count('add'),
    changed: count('change'),
    skipped: count('skip'),
    refused: refused.rows,
    reasons: refused.reasons,
    firstRefused: refused.first,
    plants: plantIds.map((plantId) => ({
      plantId,
      added: count('add', plantId),
      changed: count('change', plantId),
      skipped: count('skip', plantId),
    })),
  };
}

async function write(client: Client, { kind, doer, audit }: ImportRun): Promise<void> {
  await kinds[kind].write(client, doer);
  await queries.auditImport(client, doer, audit);
}

/** What the thread needs of the run and can be sent to it. */
const pick = ({ kind, path, mapping, ways, meanings, locale, refusedPath }: ImportRun) => ({
  kind,
  path,
  mapping,
  ways,
  meanings,
  locale,
  refusedPath,
});
