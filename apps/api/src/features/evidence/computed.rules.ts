import type { Answer, FindingCode } from '#contracts/finding-catalogue.ts';

/** What the data knows of a report that bears on its cause. Null: the data does not say. */
export interface Facts {
  wireInRange: boolean | null;
  lockState: string;
  sameToolLately: boolean | null;
  toolOverdue: boolean | null;
  sameFixturePosition: boolean | null;
  sameLotElsewhere: boolean | null;
  cavities: readonly string[];
  face: { rows: number; columns: number } | null;
  /** 1-based common stage that found it. */
  found: number;
  retention: 'terminal_lance' | 'housing_latch' | null;
  lockKind: 'none' | 'separate' | 'preassembled' | 'two_piece' | null;
}

const electricalTest = 6;
const openLocks = ['open', 'forced', 'missing', 'would_not_close'];

/** Cavity names are a row letter and a column number; with two rows or fewer only the end columns count as outer. */
function isOuter(cavity: string, { rows, columns }: { rows: number; columns: number }): boolean | null {
  const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(cavity) ?? [];
  if (!letters || !digits) return null;
  const row = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  const column = Number(digits);
  return column === 1 || column === columns || (rows > 2 && (row === 1 || row === rows));
}

function outerRow({ cavities, face }: Facts): boolean | null {
  if (!face || face.columns < 3 || cavities.length === 0) return null;
  const outer = cavities.map((cavity) => isOuter(cavity, face));
  return outer.includes(null) ? null : outer.every(Boolean);
}

/** The findings that the data answers by itself; those it cannot answer are left out. */
export function computedFindings(facts: Facts): Map<FindingCode, Answer> {
  const lockKnown = facts.lockState === 'closed' || openLocks.includes(facts.lockState);
  const known: [FindingCode, boolean | null][] = [
    ['wire_out_of_range', facts.wireInRange === null ? null : !facts.wireInRange],
    ['lock_open', lockKnown ? facts.lockState !== 'closed' : null],
    ['same_tool_lately', facts.sameToolLately],
    ['tool_overdue', facts.toolOverdue],
    ['same_fixture_position', facts.sameFixturePosition],
    ['same_lot_elsewhere', facts.sameLotElsewhere],
    ['outer_row', outerRow(facts)],
    ['after_test', facts.found > electricalTest],
  ];
  return new Map(known.flatMap(([code, yes]) => (yes === null ? [] : [[code, yes ? 'yes' : 'no']])));
}

/** Findings that this housing cannot show: it has no such lance, latch or lock. They are never proposed. */
export function mootFindings({ retention, lockKind }: Pick<Facts, 'retention' | 'lockKind'>): FindingCode[] {
  const moot: FindingCode[] = [];
  if (retention === 'housing_latch') moot.push('lance_flat', 'lance_intact', 'lance_low');
  if (retention === 'terminal_lance') moot.push('latch_whitened', 'latch_broken', 'short_moulded');
  if (lockKind === 'none') moot.push('lock_would_not_close');
  else if (lockKind !== null) moot.push('no_lock_called_for');
  return moot;
}
