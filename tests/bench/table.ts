import type { Spread } from './measure.ts';

export interface Row {
  what: string;
  ours: string;
  theirs: string;
  ratio: string;
  goal: string;
  met: boolean | null;
}

const short = (value: number) => (value >= 100 ? value.toFixed(0) : value.toFixed(1));
/** median (low–high) */
export const shown = ({ median, low, high }: Spread, unit: string) =>
  `${short(median)} ${unit} (${short(low)}–${short(high)})`;

export function print(rows: readonly Row[]): void {
  const header = { what: '', ours: 'Escape Ledger', theirs: 'yardstick', ratio: 'ratio', goal: 'goal' };
  const columns = ['what', 'ours', 'theirs', 'ratio', 'goal'] as const;
  const width = columns.map((column) => Math.max(...[header, ...rows].map((row) => row[column].length)));
  const text = (row: Record<(typeof columns)[number], string>) =>
    columns.map((column, place) => row[column].padEnd(width[place]!)).join('  ');
  console.log(`\n${text(header)}`);
  for (const row of rows) console.log(`${text(row)}${row.met === null ? '' : row.met ? '  met' : '  NOT MET'}`);
}
