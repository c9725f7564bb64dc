/** Looks at all values of the columns whose way of writing must be known before any of them can be read. */
import { type FieldName, importFields } from '#contracts/import-fields.ts';
import type { Mapping, Question } from '#contracts/imports.ts';
import { decimalMarks } from '#contracts/imports.ts';
import type { Cell } from '../formats/raw-row.ts';
import type { DateOrder } from './date.ts';
import { decideOrder, noDateEvidence, observeDate } from './date-order.ts';
import { type DecimalMark, decideMark, noNumberEvidence, observeNumber } from './number.ts';

export interface Ways {
  dateOrder: Partial<Record<FieldName, DateOrder>>;
  decimalMark: Partial<Record<FieldName, DecimalMark>>;
}
interface Watch {
  column: number;
  seen: Set<Cell>;
  observe(cell: Cell): void;
  decide(ways: Ways, questions: Question[]): void;
}

const mostSeen = 100_000;

export class ColumnEvidence {
  readonly #watches: Watch[] = [];

  constructor(kind: keyof typeof importFields, mapping: Mapping) {
    for (const [column, field] of mapping.columns.entries()) {
      const type = field && importFields[kind][field]?.type;
      if (type === 'day') this.#watches.push(watchDates(field!, column, mapping));
      else if (type === 'count' || type === 'amount' || type === 'decimal')
        this.#watches.push(watchNumbers(field!, column, mapping));
    }
  }

  observe(cells: readonly Cell[]): void {
    for (const { column, seen, observe } of this.#watches) {
      const cell = cells[column] ?? '';
      if (cell === '' || seen.has(cell)) continue;
      if (seen.size >= mostSeen) seen.clear();
      seen.add(cell);
      observe(cell);
    }
  }

  /** What the values decide, what was answered, and what remains to be asked. */
  decide(): { ways: Ways; questions: Question[] } {
    const ways: Ways = { dateOrder: {}, decimalMark: {} };
    const questions: Question[] = [];
    for (const watch of this.#watches) watch.decide(ways, questions);
    return { ways, questions };
  }
}

function watchDates(field: FieldName, column: number, mapping: Mapping): Watch {
  const evidence = noDateEvidence();
  return {
    column,
    seen: new Set(),
    observe: (cell) => observeDate(evidence, cell),
    decide(ways, questions) {
      const decision = decideOrder(evidence);
      const answer = mapping.dateOrder[field];
      if ('order' in decision) ways.dateOrder[field] = decision.order;
      else if (answer && decision.ask.includes(answer)) ways.dateOrder[field] = answer;
      else questions.push({ about: 'dateOrder', field, choices: decision.ask, example: evidence.example });
    },
  };
}

function watchNumbers(field: FieldName, column: number, mapping: Mapping): Watch {
  const evidence = noNumberEvidence();
  return {
    column,
    seen: new Set(),
    observe: (cell) => observeNumber(evidence, cell),
    decide(ways, questions) {
      const decision = decideMark(evidence);
      const answer = mapping.decimalMark[field];
      if (decision !== 'ask') ways.decimalMark[field] = decision;
      else if (answer) ways.decimalMark[field] = answer;
      else questions.push({ about: 'decimalMark', field, choices: [...decimalMarks], example: evidence.example });
    },
  };
}
