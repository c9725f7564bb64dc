/** Reads a whole file into the lines of the staging table. Holds one batch of rows at a time. */
import { hash } from 'node:crypto';
import type { z } from 'zod';
import { findWay, type Rate } from '#api/features/failures/conversion.rules.ts';
import type { FieldName } from '#contracts/import-fields.ts';
import { importTerms } from '#contracts/import-terms.ts';
import type { Layout, Mapping, Question, UnknownValue } from '#contracts/imports.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import type { ImportKind } from '#contracts/taxonomy.ts';
import { readRows } from '../formats/open-file.ts';
import type { RawRow } from '../formats/raw-row.ts';
import { ColumnEvidence, type Ways } from '../interpret/column-evidence.ts';
import { knownValues, type SavedMeaning } from '../interpret/known-values.ts';
import { indexReferences, type ReferenceRow } from '../interpret/references.ts';
import { UnknownValues } from '../interpret/unknown-values.ts';
import { type CopyValue, copyLine } from '../rows/copy-text.ts';
import type { WayOf } from '../rows/costs.ts';
import { derivedFailureColumns } from '../rows/failure-row.ts';
import { readers } from '../rows/readers.ts';
import { RowValues } from '../rows/row-values.ts';
import { type RefusedTotals, writeRefusedRows } from './refused-rows.ts';

export interface StageTask {
  kind: z.infer<typeof ImportKind>;
  path: string;
  layout: Layout;
  headerLine: number;
  headers: string[];
  mapping: Mapping;
  /** null: look at all values first. */
  ways: Ways | null;
  references: ReferenceRow[];
  meanings: SavedMeaning[];
  rates: Rate[];
  groupCurrency: string;
  today: [plantId: string, day: string][];
  locale: Locale;
  refusedPath: string;
}
export type StageResult =
  | { asked: Question[] }
  | { asked: null; ways: Ways; rows: number; refused: RefusedTotals; unknown: UnknownValue[]; unknownLeftOut: number };

export interface StageSink {
  /** Text for COPY: whole lines. */
  write(text: string): Promise<void>;
  progress(phase: 'scanning' | 'reading', share: number, rows: number): void;
}

const chunkLength = 512 * 1024;

export async function stageFile(task: StageTask, sink: StageSink): Promise<StageResult> {
  let ways = task.ways;
  if (!ways) {
    const found = await decideWays(task, sink);
    if (found.questions.length > 0) return { asked: found.questions };
    ways = found.ways;
  }
  const unknown = new UnknownValues();
  const { kind, mapping } = task;
  const known = knownValues(indexReferences(task.references), task.meanings);
  const row = new RowValues({ kind, mapping, ...ways, known, unknown });
  const context = { wayOf: waysOf(task), today: new Map(task.today) };
  const read = () => readers[kind](row, context);
  const refused = writeRefusedRows(task.refusedPath, task.locale);
  const columnOf = columnNames(task);
  let rows = 0;
  let text = '';
  for await (const batch of bodyOf(task, 'reading', sink, () => rows)) {
    for (const raw of batch) {
      rows += 1;
      row.begin(raw.cells);
      const values = raw.fault ? row.refuse(null, 'broken_quote') : read();
      if (values) text += stagedLine(kind, raw, values);
      else
        refused.add(
          row.faults.map(({ field, code, value }) => ({
            line: raw.line,
            column: columnOf(field),
            value,
            reason: code,
            note: null,
          })),
        );
      if (text.length < chunkLength) continue;
      await sink.write(text);
      text = '';
    }
    await refused.flush();
  }
  if (text !== '') await sink.write(text);
  return {
    asked: null,
    ways,
    rows,
    refused: await refused.end(),
    unknown: unknown.list(),
    unknownLeftOut: unknown.leftOut,
  };
}

async function decideWays(task: StageTask, sink: StageSink) {
  const evidence = new ColumnEvidence(task.kind, task.mapping);
  let rows = 0;
  for await (const batch of bodyOf(task, 'scanning', sink, () => rows)) {
    rows += batch.length;
    for (const { cells } of batch) evidence.observe(cells);
  }
  return evidence.decide();
}

/** The rows below the header. */
async function* bodyOf(
  task: StageTask,
  phase: 'scanning' | 'reading',
  sink: StageSink,
  rows: () => number,
): AsyncGenerator<RawRow[]> {
  let share = 0;
  const batches = readRows(task.path, task.layout, (more) => {
    share += more;
  });
  for await (const batch of batches) {
    yield batch[0]!.line > task.headerLine ? batch : batch.filter(({ line }) => line > task.headerLine);
    sink.progress(phase, Math.min(1, share), rows());
  }
}

/** A failure without a number of the sender's is known by its row; its content is what the sender said, nothing derived. */
function stagedLine(kind: StageTask['kind'], { line, cells }: RawRow, values: CopyValue[]): string {
  if (kind !== 'failures') return `${line}\t${copyLine(values)}\n`;
  const stated = copyLine(values.slice(0, -derivedFailureColumns));
  const derived = copyLine(values.slice(-derivedFailureColumns));
  const key = values[1] === null ? hash('md5', cells.map((cell) => String(cell).trim()).join('\u001f')) : '\\N';
  return `${line}\t${stated}\t${derived}\t${key}\t${hash('md5', stated)}\n`;
}

/** Ways between currencies, each looked for once. */
function waysOf({ rates, groupCurrency }: StageTask): WayOf {
  const known = new Map<string, Rate[] | null>();
  return (from, to, day) => {
    if (from === to) return [];
    const key = `${from} ${to} ${day}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const way = findWay(
      rates.filter(({ on }) => on <= day),
      from,
      to,
      groupCurrency,
    );
    known.set(key, way);
    return way;
  };
}

function columnNames({ mapping, headers, locale }: StageTask): (field: FieldName | null) => string {
  const terms = importTerms[locale];
  return (field) => {
    if (field === null) return '';
    const column = mapping.columns.indexOf(field);
    return headers[column] || terms.field[field];
  };
}
