/** English labels of the fixed vocabularies in `taxonomy.ts`; every other language has exactly these keys. */

import type { z } from 'zod';
import type { Role } from './permissions.ts';
import type { Reason } from './shared/estimate.ts';
import type {
  Cause,
  CostBasis,
  CostCategory,
  CostRateKind,
  Disposition,
  Effect,
  ForceKind,
  ImportKind,
  LockState,
  RetentionStyle,
  SecondaryLockKind,
  Source,
  Stage,
  ToolKind,
} from './taxonomy.ts';

/** The columns of a list of reports. */
export type ReportField =
  | 'number'
  | 'plant'
  | 'foundOn'
  | 'line'
  | 'station'
  | 'shift'
  | 'found'
  | 'source'
  | 'housing'
  | 'terminal'
  | 'wire'
  | 'tool'
  | 'cavities'
  | 'reelLot'
  | 'housingLot'
  | 'customer'
  | 'effect'
  | 'quantityFound'
  | 'quantityInspected'
  | 'lockState'
  | 'disposition'
  | 'safety'
  | 'cause'
  | 'subCause'
  | 'origin'
  | 'booked'
  | 'estimated'
  | 'standard'
  | 'currency'
  | 'photos'
  | 'note';

type Labels<Word extends string> = Readonly<Record<Word, string>>;

export interface Terms {
  readonly stage: Labels<Stage>;
  /** Short enough for a chart axis or a narrow column. */
  readonly stageShort: Labels<Stage>;
  readonly cause: Labels<Cause>;
  readonly subCause: Labels<string>;
  readonly source: Labels<z.infer<typeof Source>>;
  readonly effect: Labels<z.infer<typeof Effect>>;
  readonly disposition: Labels<z.infer<typeof Disposition>>;
  readonly lockState: Labels<z.infer<typeof LockState>>;
  readonly retentionStyle: Labels<z.infer<typeof RetentionStyle>>;
  readonly secondaryLockKind: Labels<z.infer<typeof SecondaryLockKind>>;
  readonly toolKind: Labels<z.infer<typeof ToolKind>>;
  readonly costCategory: Labels<z.infer<typeof CostCategory>>;
  readonly costBasis: Labels<z.infer<typeof CostBasis>>;
  readonly costRateKind: Labels<z.infer<typeof CostRateKind>>;
  readonly importKind: Labels<z.infer<typeof ImportKind>>;
  readonly forceKind: Labels<ForceKind>;
  readonly reportField: Labels<ReportField>;
  readonly role: Labels<Role>;
  readonly reason: Labels<Reason>;
  /** For a table cell. */
  readonly reasonShort: Labels<Reason>;
}

export const terms: Terms = {
  stage: {
    receiving: 'Receiving',
    termination: 'Termination (crimp)',
    lead_storage: 'Lead storage and transport',
    insertion: 'Insertion',
    lock_check: 'Secondary lock and visual check',
    electrical_test: 'End-of-line electrical test',
    final_assembly: 'Routing and final assembly',
    product_test: 'Finished-product test',
    warehouse: 'Warehouse and transit',
    field: 'Field',
  },
  stageShort: {
    receiving: 'Receiving',
    termination: 'Crimp',
    lead_storage: 'Storage',
    insertion: 'Insertion',
    lock_check: 'Lock check',
    electrical_test: 'Electr. test',
    final_assembly: 'Assembly',
    product_test: 'Product test',
    warehouse: 'Warehouse',
    field: 'Field',
  },
  cause: {
    tooling: 'Tooling',
    handling: 'Handling',
    partial_seat: 'Partial seat',
    misinsertion: 'Misinsertion',
    probe_damage: 'Test-probe damage',
    wire_dress: 'Wire dress',
    adhesive: 'Adhesive misuse',
    component: 'Component nonconformity',
    application_limit: 'Application limit',
    undetermined: 'Undetermined',
  },
  subCause: {
    worn_applicator: 'Worn applicator',
    wrong_applicator: 'Wrong or unapproved applicator',
    crimp_height: 'Crimp height off',
    bent_terminal: 'Terminal bent in crimping',
    carrier_tab_long: 'Carrier tab left long',
    wire_out_of_range: 'Wire outside the terminal’s range',
    setup: 'Set-up error',
    reel_crushed: 'Reel crushed',
    leads_tangled: 'Leads tangled',
    bulk_box: 'Loose in a bulk box',
    lance_bent: 'Lance bent in storage or transport',
    dropped: 'Dropped',
    not_pushed_home: 'Not pushed home',
    insulation_blocks: 'Insulation blocks the cavity',
    seal_blocks: 'Seal blocks the cavity',
    lock_forced: 'Secondary lock forced',
    lock_left_open: 'Secondary lock left open',
    wrong_cavity: 'Wrong cavity',
    wrong_way_up: 'Wrong way up',
    over_inserted: 'Pushed past its stop',
    removal_tool_damage: 'Damaged by a removal tool',
    probe_oversize: 'Probe too large',
    probe_worn: 'Probe worn',
    probe_off_axis: 'Probe off axis',
    over_travel: 'Probe over-travels',
    sharp_exit: 'Wire bent hard at the exit',
    no_strain_relief: 'No strain relief',
    tie_too_near: 'Tie too near',
    wire_too_short: 'Wire too short',
    wire_pulled: 'Wire pulled',
    glue_in_rework: 'Glue used in rework',
    hot_melt: 'Hot melt in the cavity',
    coating_in_cavity: 'Coating in the cavity',
    latch_wetted: 'Latch wetted',
    housing_short_moulded: 'Housing latch short-moulded',
    housing_flash: 'Flash on the housing',
    terminal_stamped_low: 'Terminal stamped low',
    lance_low: 'Lance low as supplied',
    material: 'Material',
    load_above_rating: 'Load above the rating',
    no_secondary_lock: 'No secondary lock where one is called for',
    vibration: 'Vibration',
    temperature: 'Temperature',
  },
  source: { line: 'Line', audit: 'Audit', customer: 'Customer', field: 'Field' },
  effect: {
    open_circuit: 'Open circuit',
    intermittent: 'Intermittent',
    high_resistance: 'Raised contact resistance',
    heating: 'Heating',
    mating_blocked: 'Mating blocked',
    neighbour_short: 'Short to the neighbour',
    seal_out: 'Seal pushed out',
    no_effect: 'No effect',
  },
  disposition: {
    reworked: 'Reworked',
    scrapped: 'Scrapped',
    sorted: 'Sorted',
    replaced: 'Replaced',
    returned: 'Returned to the supplier',
    used_as_is: 'Used as is',
    pending: 'Not decided yet',
  },
  lockState: {
    none_fitted: 'None fitted',
    closed: 'Closed',
    open: 'Open',
    forced: 'Forced',
    missing: 'Missing',
    would_not_close: 'Would not close',
    unknown: 'Not known',
  },
  retentionStyle: { terminal_lance: 'Terminal lance', housing_latch: 'Housing latch' },
  secondaryLockKind: {
    none: 'None',
    separate: 'Separate part',
    preassembled: 'Pre-assembled to the housing',
    two_piece: 'Two-piece housing',
  },
  toolKind: {
    applicator: 'Applicator',
    crimp_die: 'Crimp die',
    hand_tool: 'Hand tool',
    insertion_tool: 'Insertion tool',
    removal_tool: 'Removal tool',
    test_fixture: 'Test fixture',
    test_probe: 'Test probe',
    other: 'Other tool',
  },
  costCategory: {
    rework_labour: 'Rework labour',
    parts: 'Parts',
    scrap: 'Scrap',
    sorting: 'Sorting and containment',
    line_stop: 'Line stoppage',
    freight: 'Freight',
    travel: 'Travel',
    customer_charge: 'Customer charge',
    warranty: 'Warranty and field service',
    administration: 'Administration',
  },
  costBasis: { booked: 'Booked', estimated: 'Estimated' },
  costRateKind: { labour: 'Labour', line_stop: 'Line stoppage' },
  importKind: {
    failures: 'Failure reports',
    production: 'Production volumes',
    findings: 'Findings on reports that are here',
    force: 'Force samples',
  },
  forceKind: { retention: 'Retention force', pull_out: 'Pull-out force' },
  reportField: {
    number: 'Report',
    plant: 'Plant',
    foundOn: 'Found on',
    line: 'Line',
    station: 'Station',
    shift: 'Shift',
    found: 'Found at stage',
    source: 'Source',
    housing: 'Housing',
    terminal: 'Terminal',
    wire: 'Wire',
    tool: 'Tool',
    cavities: 'Cavities',
    reelLot: 'Reel lot',
    housingLot: 'Housing lot',
    customer: 'Customer',
    effect: 'Effect',
    quantityFound: 'Quantity found',
    quantityInspected: 'Quantity inspected',
    lockState: 'Secondary lock',
    disposition: 'Disposition',
    safety: 'Safety-relevant',
    cause: 'Cause',
    subCause: 'Sub-cause',
    origin: 'Origin stage',
    booked: 'Booked cost',
    estimated: 'Estimated cost',
    standard: 'Standard cost',
    currency: 'Currency',
    photos: 'Photos',
    note: 'Note',
  },
  role: {
    viewer: 'Viewer',
    inspector: 'Inspector',
    engineer: 'Engineer',
    manager: 'Manager',
    administrator: 'Administrator',
  },
  reason: {
    no_production: 'no production was reported for this selection',
    no_reports: 'there are no reports in this selection',
    too_few: 'too few reports for a dependable figure',
    no_rate: 'an exchange rate is missing',
    no_standard_cost: 'no standard cost is on file',
    no_cost: 'no cost is on file',
    not_finite: 'the figure has no finite value here',
    exceeds_production: 'more failures are on file than terminals produced',
  },
  reasonShort: {
    no_production: 'no production',
    no_reports: 'no reports',
    too_few: 'too few',
    no_rate: 'no exchange rate',
    no_standard_cost: 'no standard cost',
    no_cost: 'no cost',
    not_finite: 'not finite',
    exceeds_production: 'exceeds production',
  },
};
