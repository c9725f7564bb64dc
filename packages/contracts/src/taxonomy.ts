/** The trade's fixed vocabularies. Wire values are lower_snake words; their labels live in `terms.*.ts`. */
import { z } from 'zod';

/** The ten common process stages in order; a plant's own stage maps to one of them. Common practice, no source. */
export const stages = [
  'receiving',
  'termination',
  'lead_storage',
  'insertion',
  'lock_check',
  'electrical_test',
  'final_assembly',
  'product_test',
  'warehouse',
  'field',
] as const;
export const Stage = z.enum(stages);
export type Stage = z.infer<typeof Stage>;
/** 1-based position of a stage in the process, as stored in the database. */
export const stageNumber = (stage: Stage): number => stages.indexOf(stage) + 1;
export const stageOf = (number: number): Stage => {
  const stage = stages[number - 1];
  if (!stage) throw new RangeError(`No stage has the number ${number}; stages are 1 to ${stages.length}.`);
  return stage;
};

export const causes = [
  'tooling',
  'handling',
  'partial_seat',
  'misinsertion',
  'probe_damage',
  'wire_dress',
  'adhesive',
  'component',
  'application_limit',
  'undetermined',
] as const;
export const Cause = z.enum(causes);
export type Cause = z.infer<typeof Cause>;

/** Sub-causes, the usual origin stage, and the first stage whose checks can see the fault. Common practice, no source. */
export const causeTaxonomy: Record<
  Cause,
  { subCauses: readonly string[]; usualOrigin: Stage | null; visibleFrom: Stage | null }
> = {
  tooling: {
    subCauses: [
      'worn_applicator',
      'wrong_applicator',
      'crimp_height',
      'bent_terminal',
      'carrier_tab_long',
      'wire_out_of_range',
      'setup',
    ],
    usualOrigin: 'termination',
    visibleFrom: 'termination',
  },
  handling: {
    subCauses: ['reel_crushed', 'leads_tangled', 'bulk_box', 'lance_bent', 'dropped'],
    usualOrigin: 'lead_storage',
    visibleFrom: 'insertion',
  },
  partial_seat: {
    subCauses: ['not_pushed_home', 'insulation_blocks', 'seal_blocks', 'lock_forced', 'lock_left_open'],
    usualOrigin: 'insertion',
    visibleFrom: 'lock_check',
  },
  misinsertion: {
    subCauses: ['wrong_cavity', 'wrong_way_up', 'over_inserted', 'removal_tool_damage'],
    usualOrigin: 'insertion',
    visibleFrom: 'lock_check',
  },
  probe_damage: {
    subCauses: ['probe_oversize', 'probe_worn', 'probe_off_axis', 'over_travel'],
    usualOrigin: 'electrical_test',
    visibleFrom: 'product_test',
  },
  wire_dress: {
    subCauses: ['sharp_exit', 'no_strain_relief', 'tie_too_near', 'wire_too_short', 'wire_pulled'],
    usualOrigin: 'final_assembly',
    visibleFrom: 'product_test',
  },
  adhesive: {
    subCauses: ['glue_in_rework', 'hot_melt', 'coating_in_cavity', 'latch_wetted'],
    usualOrigin: 'final_assembly',
    visibleFrom: 'product_test',
  },
  component: {
    subCauses: ['housing_short_moulded', 'housing_flash', 'terminal_stamped_low', 'lance_low', 'material'],
    usualOrigin: 'receiving',
    visibleFrom: 'receiving',
  },
  application_limit: {
    subCauses: ['load_above_rating', 'no_secondary_lock', 'vibration', 'temperature'],
    usualOrigin: null,
    visibleFrom: 'product_test',
  },
  undetermined: { subCauses: [], usualOrigin: null, visibleFrom: null },
};

export const sources = ['line', 'audit', 'customer', 'field'] as const;
export const Source = z.enum(sources);
export const effects = [
  'open_circuit',
  'intermittent',
  'high_resistance',
  'heating',
  'mating_blocked',
  'neighbour_short',
  'seal_out',
  'no_effect',
] as const;
export const Effect = z.enum(effects);
export const dispositions = [
  'reworked',
  'scrapped',
  'sorted',
  'replaced',
  'returned',
  'used_as_is',
  'pending',
] as const;
export const Disposition = z.enum(dispositions);
/** How the secondary lock (TPA) was found. */
export const lockStates = ['none_fitted', 'closed', 'open', 'forced', 'missing', 'would_not_close', 'unknown'] as const;
export const LockState = z.enum(lockStates);
export const retentionStyles = ['terminal_lance', 'housing_latch'] as const;
export const RetentionStyle = z.enum(retentionStyles);
export const secondaryLockKinds = ['none', 'separate', 'preassembled', 'two_piece'] as const;
export const SecondaryLockKind = z.enum(secondaryLockKinds);
export const toolKinds = [
  'applicator',
  'crimp_die',
  'hand_tool',
  'insertion_tool',
  'removal_tool',
  'test_fixture',
  'test_probe',
  'other',
] as const;
export const ToolKind = z.enum(toolKinds);
export const costCategories = [
  'rework_labour',
  'parts',
  'scrap',
  'sorting',
  'line_stop',
  'freight',
  'travel',
  'customer_charge',
  'warranty',
  'administration',
] as const;
export const CostCategory = z.enum(costCategories);
export const costBases = ['booked', 'estimated'] as const;
export const CostBasis = z.enum(costBases);
export const costRateKinds = ['labour', 'line_stop'] as const;
export const CostRateKind = z.enum(costRateKinds);
export const importKinds = ['failures', 'production', 'findings', 'force'] as const;
export const ImportKind = z.enum(importKinds);
export const forceKinds = ['retention', 'pull_out'] as const;
export const ForceKind = z.enum(forceKinds);
export type ForceKind = z.infer<typeof ForceKind>;
export const forceUnits = ['N', 'lbf'] as const;
export const ForceUnit = z.enum(forceUnits);
export type ForceUnit = z.infer<typeof ForceUnit>;
