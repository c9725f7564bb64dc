/** 8D cases of the demo, tied to what was planted, in every state. Days count back from the last day. */
import type { Cause, Stage } from '#contracts/taxonomy.ts';
import type { PlantCode } from './group/plants.ts';

export interface CasePlan {
  plant: PlantCode;
  customer: string | null;
  line: string;
  title: string;
  cause: Cause;
  subCause: string;
  origin: Stage;
  escape: Stage;
  toolTypes: readonly string[];
  /** asked of every plant, where given */
  practice: string;
  safety: boolean;
  /** days before the last day on which it was opened */
  opened: number;
  /** disciplines written, and signed, from D0 on; 9: all, and closed */
  written: number;
  signed: number;
  symptom: string;
  /** from what happened down to the end, for each tree */
  occurrence: readonly string[];
  nonDetection: readonly string[];
  system: readonly string[];
  corrections: readonly [occurrence: string, nonDetection: string, rejected: string];
  prevention: string;
  check: string;
}

const none = { customer: null, toolTypes: [], practice: '', safety: false } as const;

export const casePlans: readonly CasePlan[] = [
  {
    ...none,
    ...{
      plant: 'POZ',
      line: 'L3',
      cause: 'tooling',
      subCause: 'worn_applicator',
      origin: 'termination',
      escape: 'lock_check',
    },
    ...{ customer: 'HFR', opened: 185, written: 9, signed: 9, toolTypes: ['AT-150'] },
    title: 'Lances of TC-09L flattened on L3',
    symptom: 'Terminals came loose at the product test; all lances flattened in the same way.',
    occurrence: [
      'Terminals back out',
      'The lance is flat',
      'The applicator presses on the lance',
      'Its guide is worn beyond the limit',
    ],
    nonDetection: [
      'Flat lances passed the lock check',
      'The secondary lock closed over them',
      'Nobody pulls a terminal at insertion',
    ],
    system: [
      'The guide wore unnoticed',
      'Service is planned by calendar',
      'Cycles are counted, but nothing is done with the count',
    ],
    corrections: [
      'Replace the applicator',
      'Pull check of the first ten terminals of every reel',
      'Sort by sight after crimping',
    ],
    prevention: 'Applicators are serviced by cycle count; the count is read at every start of shift.',
    check: 'Look at the lances of every applicator of this type that is past nine tenths of its service interval.',
  },
  {
    ...none,
    ...{
      plant: 'QRO',
      line: 'L2',
      cause: 'partial_seat',
      subCause: 'not_pushed_home',
      origin: 'insertion',
      escape: 'lock_check',
    },
    ...{ customer: 'CBW', opened: 215, written: 9, signed: 9, practice: 'Insertion by hand without a pull check' },
    title: 'Terminals not pushed home on L2',
    symptom: 'Terminals short of their lock; they re-seat with a click and then hold.',
    occurrence: [
      'Terminals were not home',
      'The push ended before the click',
      'The click is not heard at this station',
    ],
    nonDetection: ['The lock check let them pass', 'The secondary lock closes when a terminal is only slightly short'],
    system: ['Insertion was not followed by a pull', 'The work instruction asks for a push only'],
    corrections: [
      'Push-click-pull at every insertion',
      'The shift lead pulls ten terminals an hour',
      'Press harder on the lock',
    ],
    prevention: 'Push, click, pull stands in the work instruction of every hand insertion.',
    check: 'Watch ten hand insertions: is every terminal pulled after the click?',
  },
  {
    ...none,
    ...{
      plant: 'SUZ',
      line: 'L3',
      cause: 'probe_damage',
      subCause: 'probe_oversize',
      origin: 'electrical_test',
      escape: 'product_test',
    },
    ...{ customer: 'GLR', opened: 120, written: 6, signed: 5 },
    title: 'Contacts opened at fixture position C4',
    symptom: 'Open contacts and probe marks, nearly all at position C4.',
    occurrence: ['The contact is open', 'The probe widened it', 'The probe at C4 is larger than drawn'],
    nonDetection: ['The electrical test made the fault and passed it', 'It tests before the damage takes effect'],
    system: ['A wrong probe was fitted', 'Probes are not checked when they are changed'],
    corrections: ['Fit the probe of the drawing', 'Gauge every probe after a change', 'Test with less force only'],
    prevention: 'A gauge hangs at every fixture; the change of a probe is signed.',
    check: 'Gauge the probes of every fixture against the drawing.',
  },
  {
    ...none,
    ...{
      plant: 'LEJ',
      line: 'L5',
      cause: 'wire_dress',
      subCause: 'no_strain_relief',
      origin: 'final_assembly',
      escape: 'product_test',
    },
    ...{ customer: 'FHG', opened: 160, written: 5, signed: 4 },
    title: 'Kontakte der Außenreihen von HX-13 gezogen',
    symptom: 'Kontakte der Reihen A und C beim Kunden gelöst, Verriegelung unbeschädigt.',
    occurrence: [
      'Kontakte werden gezogen',
      'Die Leitung verlässt das Gehäuse im scharfen Winkel',
      'Die Zeichnung zeigt keine Zugentlastung',
    ],
    nonDetection: ['Die Produktprüfung erkennt es nicht', 'Die Last tritt erst beim Einbau auf'],
    system: ['Die Zeichnung wurde so freigegeben', 'Die Prüfliste der Freigabe fragt nicht nach Zugentlastung'],
    corrections: ['Zugentlastung in die Zeichnung', 'Zugversuch an der Außenreihe je Los', 'Kabelbinder versetzen'],
    prevention: 'Die Prüfliste der Zeichnungsfreigabe fragt nach Austrittswinkel und Zugentlastung.',
    check: 'Zeichnungen ohne Zugentlastung an Außenreihen suchen.',
  },
  {
    ...none,
    ...{
      plant: 'TOL',
      line: 'L1',
      cause: 'adhesive',
      subCause: 'glue_in_rework',
      origin: 'final_assembly',
      escape: 'product_test',
    },
    ...{ customer: 'DUN', opened: 90, written: 4, signed: 3, safety: true },
    title: 'Glue in cavities after rework',
    symptom: 'Residue in the cavity, no float, cracked bond.',
    occurrence: ['Terminals have no float', 'Glue was used in rework'],
    nonDetection: ['The product test passed them', 'A glued terminal conducts until the bond cracks'],
    system: ['Rework had no instruction', 'Nobody had forbidden glue'],
    corrections: ['Rework instruction without glue', 'Float check after rework', 'Another glue'],
    prevention: 'Adhesives are not kept at rework places.',
    check: 'Look for adhesives at rework places. Never bond terminals.',
  },
  {
    ...none,
    ...{
      plant: 'POZ',
      line: 'L1',
      cause: 'component',
      subCause: 'lance_low',
      origin: 'receiving',
      escape: 'insertion',
    },
    ...{ opened: 60, written: 3, signed: 2 },
    title: 'Low lances of reel lot R05-4471-X',
    symptom: 'Terminals of one reel lot do not hold, at two plants.',
    occurrence: ['The lance is low', 'The lot was stamped low'],
    nonDetection: ['Receiving did not measure it', 'The sample plan looks at crimp height only'],
    system: ['The supplier’s change was not told', 'The contract does not ask for it'],
    corrections: ['Return the lot', 'Measure lance height at receiving', 'Bend lances by hand'],
    prevention: 'Lance height is measured at receiving.',
    check: 'Block reel lot R05-4471-X.',
  },
  {
    ...none,
    ...{
      plant: 'QRO',
      line: 'L4',
      cause: 'handling',
      subCause: 'bulk_box',
      origin: 'lead_storage',
      escape: 'insertion',
    },
    ...{ opened: 4, written: 2, signed: 1 },
    title: 'Leads bent in bulk boxes on L4',
    symptom: 'Lances bent in all directions since leads come in bulk boxes.',
    ...{ occurrence: [], nonDetection: [], system: [], corrections: ['', '', ''] as const, prevention: '', check: '' },
  },
  {
    ...none,
    ...{
      plant: 'LEJ',
      line: 'L5',
      cause: 'wire_dress',
      subCause: 'tie_too_near',
      origin: 'final_assembly',
      escape: 'product_test',
    },
    ...{ customer: 'ALF', opened: 2, written: 0, signed: 0 },
    title: 'Einzelner gelöster Kontakt, Kundenrückmeldung',
    symptom: '',
    ...{ occurrence: [], nonDetection: [], system: [], corrections: ['', '', ''] as const, prevention: '', check: '' },
  },
];
