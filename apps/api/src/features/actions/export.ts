import type { Readable } from 'node:stream';
import type { Cell, Row } from '#api/platform/export/cell.ts';
import { toCsv } from '#api/platform/export/csv.ts';
import { streamRows } from '#api/platform/export/row-stream.ts';
import { toXlsx } from '#api/platform/export/xlsx.ts';
import { actionTerms as german } from '#contracts/action-terms.de.ts';
import { type ActionField, actionTerms as english } from '#contracts/action-terms.en.ts';
import { ActionRow } from '#contracts/actions.ts';
import type { Database } from '#db/client.ts';
import { type Asked, everyAction } from './list.queries.ts';

type Terms = typeof english;
const date = (day: string | null): Cell => (day === null ? null : { day });

const columns: Record<ActionField, (row: ActionRow, terms: Terms) => Cell> = {
  number: (row) => row.number,
  plant: (row) => row.plantCode,
  kind: (row, terms) => terms.kind[row.kind],
  title: (row) => row.title,
  owner: (row) => row.owner,
  openedOn: (row) => date(row.openedOn),
  dueOn: (row) => date(row.dueOn),
  state: (row, terms) => terms.state[row.state],
  stateReason: (row) => row.stateReason,
  closedOn: (row) => date(row.closedOn),
  daysOpen: (row) => row.daysOpen,
  daysOverdue: (row) => row.daysOverdue,
  reopened: (row) => row.reopened,
  effect: (row, terms) => (row.effect?.verdict ? terms.verdict[row.effect.verdict] : null),
};
const fields = Object.keys(columns) as ActionField[];

async function* table(rows: AsyncIterable<ActionRow>, terms: Terms): AsyncGenerator<Row> {
  yield fields.map((field) => terms.field[field]);
  for await (const row of rows) yield fields.map((field) => columns[field](row, terms));
}

/** The filtered list as a file, streamed, in the reader's language. */
export function exportActions(db: Database, asked: Asked, format: 'csv' | 'xlsx'): Readable {
  const { locale } = asked.actor;
  const terms = locale === 'de' ? german : english;
  const rows = table(streamRows(db, everyAction(asked), ActionRow), terms);
  return format === 'csv' ? toCsv(rows, locale) : toXlsx(rows, terms.list);
}
