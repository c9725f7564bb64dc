/**
 * The findings that separate the causes. What they say of each cause is in `packages/analysis/src/suggestion/priors.ts`; their words and how to
 * look are in `finding-terms.*.ts`. Common practice, no source.
 */
import { z } from 'zod';

export const findingCodes = [
  'lance_flat',
  'lance_intact',
  'lance_low',
  'terminal_bent',
  'terminal_stretched',
  'same_deformation',
  'mixed_deformation',
  'carrier_tab_long',
  'crimp_height_out',
  'wire_out_of_range',
  'witness_mark',
  'reseats_and_holds',
  'depth_short',
  'insulation_blocks',
  'probe_mark',
  'contact_opened',
  'residue',
  'no_float',
  'reworked_before',
  'latch_whitened',
  'latch_broken',
  'orientation_sheared',
  'removal_marks',
  'wrong_circuit',
  'short_moulded',
  'flash_in_cavity',
  'dimension_out',
  'sharp_exit',
  'tie_near',
  'side_load',
  'wire_short',
  'holds_when_freed',
  'lock_open',
  'lock_would_not_close',
  'no_lock_called_for',
  'same_tool_lately',
  'tool_overdue',
  'same_fixture_position',
  'same_lot_elsewhere',
  'outer_row',
  'after_test',
  'same_box_mixed_tools',
  'force_below_minimum',
  'load_above_rating',
] as const;
export const FindingCode = z.enum(findingCodes);
export type FindingCode = z.infer<typeof FindingCode>;

export const findingParts = ['terminal', 'housing', 'wire', 'lock', 'pattern', 'test'] as const;
export type FindingPart = (typeof findingParts)[number];

export const findingUnits = ['mm', 'N', 'lbf', 'deg'] as const;
export const FindingUnit = z.enum(findingUnits);
export type FindingUnit = z.infer<typeof FindingUnit>;

/** A measured finding is "yes" where the value is `below` or `above` the limit of the drawing, which is entered with the value. */
export interface FindingEntry {
  part: FindingPart;
  /** `computed` findings are answered by the data and never asked. */
  taken: 'seen' | 'measured' | 'computed';
  tool:
    | 'none'
    | 'magnifier'
    | 'micrometer'
    | 'depth_gauge'
    | 'force_gauge'
    | 'protractor'
    | 'ruler'
    | 'measuring_microscope';
  unit?: FindingUnit;
  yesWhen?: 'below' | 'above';
}

const seen = (part: FindingPart, tool: FindingEntry['tool'] = 'none'): FindingEntry => ({ part, taken: 'seen', tool });
const measured = (
  part: FindingPart,
  tool: FindingEntry['tool'],
  unit: FindingUnit,
  yesWhen: 'below' | 'above',
): FindingEntry => ({ part, taken: 'measured', tool, unit, yesWhen });
const computed = (part: FindingPart): FindingEntry => ({ part, taken: 'computed', tool: 'none' });

export const findingCatalogue: Record<FindingCode, FindingEntry> = {
  lance_flat: seen('terminal', 'magnifier'),
  lance_intact: seen('terminal', 'magnifier'),
  lance_low: measured('terminal', 'measuring_microscope', 'mm', 'below'),
  terminal_bent: seen('terminal', 'magnifier'),
  terminal_stretched: seen('terminal', 'magnifier'),
  same_deformation: seen('pattern', 'magnifier'),
  mixed_deformation: seen('pattern', 'magnifier'),
  carrier_tab_long: seen('terminal', 'magnifier'),
  crimp_height_out: seen('terminal', 'micrometer'),
  wire_out_of_range: computed('wire'),
  witness_mark: seen('terminal', 'magnifier'),
  reseats_and_holds: seen('test'),
  depth_short: measured('test', 'depth_gauge', 'mm', 'below'),
  insulation_blocks: seen('wire', 'magnifier'),
  probe_mark: seen('terminal', 'magnifier'),
  contact_opened: seen('terminal', 'magnifier'),
  residue: seen('terminal', 'magnifier'),
  no_float: seen('housing'),
  reworked_before: seen('pattern'),
  latch_whitened: seen('housing', 'magnifier'),
  latch_broken: seen('housing', 'magnifier'),
  orientation_sheared: seen('housing', 'magnifier'),
  removal_marks: seen('housing', 'magnifier'),
  wrong_circuit: seen('wire'),
  short_moulded: seen('housing', 'magnifier'),
  flash_in_cavity: seen('housing', 'magnifier'),
  dimension_out: seen('housing', 'measuring_microscope'),
  sharp_exit: measured('wire', 'protractor', 'deg', 'above'),
  tie_near: measured('wire', 'ruler', 'mm', 'below'),
  side_load: seen('wire'),
  wire_short: seen('wire'),
  holds_when_freed: seen('wire'),
  lock_open: computed('lock'),
  lock_would_not_close: seen('lock'),
  no_lock_called_for: seen('lock'),
  same_tool_lately: computed('pattern'),
  tool_overdue: computed('pattern'),
  same_fixture_position: computed('pattern'),
  same_lot_elsewhere: computed('pattern'),
  outer_row: computed('pattern'),
  after_test: computed('pattern'),
  same_box_mixed_tools: seen('pattern'),
  force_below_minimum: measured('test', 'force_gauge', 'N', 'below'),
  load_above_rating: measured('test', 'force_gauge', 'N', 'above'),
};

export const answers = ['yes', 'no', 'could_not_tell'] as const;
export const Answer = z.enum(answers);
export type Answer = z.infer<typeof Answer>;
