import type { CauseName, PerCause } from './causes.ts';
import { causes } from './causes.ts';

export interface FindingPrior {
  code: string;
  /** Findings of one group look at the same thing, so that together they count less than their sum. */
  group:
    | 'terminal'
    | 'lance'
    | 'seat'
    | 'contact'
    | 'bond'
    | 'latch'
    | 'moulding'
    | 'dress'
    | 'lock'
    | 'pattern'
    | 'force';
  /** Work of taking it, minutes; 0 where the data already answers. */
  minutes: number;
  /** P(yes | cause), the engineers' prior. Common practice, no source: from the "what usually proves it" of each cause. */
  yes: PerCause;
}

/** One row a finding: code, group, minutes, P(yes) in per cent for the causes in their order (to, ha, ps, mi, pd, wd, ad, co, al). */
const rows: readonly (readonly [string, FindingPrior['group'], number, readonly number[]])[] = [
  ['lance_flat', 'lance', 2, [35, 45, 5, 15, 12, 6, 5, 25, 6]],
  ['lance_intact', 'lance', 2, [45, 35, 93, 70, 70, 90, 90, 45, 90]],
  ['lance_low', 'lance', 6, [30, 30, 5, 12, 12, 7, 5, 75, 7]],
  ['terminal_bent', 'terminal', 2, [55, 55, 8, 20, 15, 18, 5, 6, 8]],
  ['terminal_stretched', 'terminal', 3, [30, 12, 3, 6, 5, 30, 3, 5, 35]],
  ['same_deformation', 'terminal', 4, [80, 8, 6, 8, 35, 10, 4, 50, 6]],
  ['mixed_deformation', 'terminal', 4, [8, 75, 5, 12, 8, 8, 4, 5, 6]],
  ['carrier_tab_long', 'terminal', 2, [35, 4, 8, 4, 3, 3, 3, 4, 3]],
  ['crimp_height_out', 'terminal', 4, [60, 5, 5, 4, 4, 4, 4, 5, 5]],
  ['wire_out_of_range', 'terminal', 0, [35, 4, 6, 4, 4, 4, 4, 4, 6]],
  ['witness_mark', 'seat', 3, [65, 45, 6, 40, 88, 88, 60, 55, 92]],
  ['reseats_and_holds', 'seat', 2, [15, 12, 93, 45, 20, 65, 10, 18, 70]],
  ['depth_short', 'seat', 4, [25, 20, 88, 15, 30, 20, 20, 25, 20]],
  ['insulation_blocks', 'seat', 2, [15, 4, 40, 6, 3, 4, 6, 5, 3]],
  ['probe_mark', 'contact', 2, [6, 6, 6, 6, 86, 6, 5, 5, 6]],
  ['contact_opened', 'contact', 3, [10, 12, 4, 8, 80, 6, 4, 8, 8]],
  ['residue', 'bond', 1, [3, 3, 3, 4, 3, 3, 93, 4, 3]],
  ['no_float', 'bond', 1, [8, 6, 12, 15, 8, 30, 85, 12, 10]],
  ['reworked_before', 'bond', 3, [12, 12, 15, 35, 12, 12, 75, 10, 10]],
  ['latch_whitened', 'latch', 2, [8, 8, 6, 72, 22, 28, 12, 14, 40]],
  ['latch_broken', 'latch', 2, [5, 6, 4, 42, 12, 18, 10, 25, 40]],
  ['orientation_sheared', 'latch', 2, [3, 3, 4, 58, 3, 3, 3, 4, 3]],
  ['removal_marks', 'latch', 2, [8, 12, 10, 38, 10, 8, 22, 8, 8]],
  ['wrong_circuit', 'latch', 1, [2, 2, 4, 45, 2, 2, 3, 2, 2]],
  ['short_moulded', 'moulding', 4, [3, 3, 5, 5, 3, 3, 3, 55, 4]],
  ['flash_in_cavity', 'moulding', 3, [3, 3, 12, 5, 3, 3, 3, 35, 3]],
  ['dimension_out', 'moulding', 15, [12, 8, 5, 5, 5, 5, 5, 82, 8]],
  ['sharp_exit', 'dress', 1, [14, 14, 16, 14, 16, 86, 16, 14, 35]],
  ['tie_near', 'dress', 2, [15, 15, 15, 15, 15, 62, 15, 15, 28]],
  ['side_load', 'dress', 2, [10, 10, 10, 12, 12, 86, 15, 10, 45]],
  ['wire_short', 'dress', 2, [8, 8, 10, 8, 8, 48, 8, 8, 20]],
  ['holds_when_freed', 'dress', 3, [8, 8, 12, 8, 10, 82, 10, 8, 45]],
  ['lock_open', 'lock', 0, [15, 12, 60, 25, 10, 10, 15, 14, 10]],
  ['lock_would_not_close', 'lock', 1, [10, 8, 45, 22, 4, 4, 12, 10, 3]],
  ['no_lock_called_for', 'lock', 2, [10, 10, 15, 10, 10, 14, 12, 10, 60]],
  ['same_tool_lately', 'pattern', 0, [85, 30, 32, 30, 34, 30, 30, 32, 30]],
  ['tool_overdue', 'pattern', 0, [60, 20, 20, 20, 22, 20, 20, 20, 20]],
  ['same_fixture_position', 'pattern', 0, [10, 10, 10, 10, 80, 10, 10, 10, 10]],
  ['same_lot_elsewhere', 'pattern', 0, [10, 20, 8, 8, 8, 8, 10, 75, 10]],
  ['outer_row', 'pattern', 0, [45, 45, 45, 45, 45, 80, 45, 45, 55]],
  ['after_test', 'pattern', 0, [30, 30, 32, 30, 90, 85, 75, 40, 88]],
  ['same_box_mixed_tools', 'pattern', 3, [6, 68, 8, 8, 5, 6, 6, 15, 5]],
  ['force_below_minimum', 'force', 8, [62, 66, 10, 58, 50, 15, 30, 80, 5]],
  ['load_above_rating', 'force', 20, [5, 5, 5, 6, 5, 35, 6, 6, 86]],
];

export const findingPriors: readonly FindingPrior[] = rows.map(([code, group, minutes, percent]) => ({
  code,
  group,
  minutes,
  yes: Object.fromEntries(causes.map((cause, place) => [cause, percent[place]! / 100])) as Record<CauseName, number>,
}));
