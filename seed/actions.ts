/** Actions of the demo: two tied to the planted fixes, and others of every kind, state and age. Days count back from the last day. */
import type { ActionKind, ActionState } from '#contracts/actions.ts';
import type { PreventionKind } from '#contracts/prevention.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import type { PlantCode } from './group/plants.ts';
import { noStrainRelief } from './scenario/no-strain-relief.ts';
import { pullCheck } from './scenario/pull-check.ts';
import type { World } from './world.ts';

export interface ActionPlan {
  plant: PlantCode;
  kind: ActionKind;
  title: string;
  description: string;
  prevention: PreventionKind | null;
  /** days before the last day on which it was opened, and was or is due (negative: still to come) */
  opened: number;
  due: number;
  state: ActionState;
  reason: string | null;
  hours: number;
  /** owned by the plant's manager instead of its engineer */
  byManager: boolean;
  evidence: string;
  effect: {
    cause: Cause;
    line: string;
    housing: string | null;
    beforeDays: number;
    cleanPoint: number;
    reduction: number;
  } | null;
}

const plain = { prevention: null, reason: null, byManager: false, effect: null } as const;

/** The fix that worked and the one that did not, as they were promised. */
export const plantedActions: readonly ActionPlan[] = [
  {
    ...plain,
    plant: pullCheck.plant,
    kind: 'corrective',
    title: 'Push-click-pull check at every insertion on L2',
    description:
      'Operators push until it clicks and pull each terminal; training, work instruction, a sample by the shift lead.',
    prevention: 'push_click_pull',
    opened: pullCheck.introduced + 14,
    due: pullCheck.introduced,
    state: 'verified',
    hours: 40,
    evidence: 'Work instruction released, all three shifts trained; the shift lead pulls ten terminals an hour.',
    effect: {
      cause: 'partial_seat',
      line: pullCheck.line,
      housing: null,
      beforeDays: 150,
      cleanPoint: pullCheck.introduced,
      reduction: 0.6,
    },
  },
  {
    ...plain,
    plant: noStrainRelief.plant,
    kind: 'corrective',
    title: 'Kabelbinder an HX-13 um 20 mm versetzt',
    description: 'Der Binder rückt vom Steckerausgang weg. Die Zeichnung bleibt, wie sie ist.',
    prevention: 'strain_relief',
    opened: noStrainRelief.tieMoved + 12,
    due: noStrainRelief.tieMoved,
    state: 'verified',
    hours: 12,
    evidence: 'Brett der Linie L5 geändert, Muster gezeigt.',
    effect: {
      cause: 'wire_dress',
      line: noStrainRelief.line,
      housing: noStrainRelief.housing,
      beforeDays: 150,
      cleanPoint: noStrainRelief.tieMoved,
      reduction: 0.7,
    },
  },
];

type Words = readonly [kind: ActionKind, prevention: PreventionKind | null, title: string, titleDe: string];
const work: readonly Words[] = [
  ['containment', null, 'Sort the stock of the last two weeks', 'Bestand der letzten zwei Wochen sortieren'],
  ['containment', null, 'Hold the finished harnesses of the shift', 'Fertige Leitungssätze der Schicht sperren'],
  ['corrective', 'tool_service', 'Service the applicator by cycle count', 'Applikator nach Hubzahl warten'],
  ['corrective', 'probe_change', 'Replace the probes of the test fixture', 'Prüfspitzen der Vorrichtung tauschen'],
  [
    'corrective',
    'push_click_pull',
    'Add a pull check to the work instruction',
    'Zugprüfung in die Arbeitsanweisung aufnehmen',
  ],
  ['preventive', 'lead_trays', 'Carry crimped leads in trays', 'Gecrimpte Leitungen in Schalen führen'],
  [
    'preventive',
    'secondary_lock',
    'Fit a secondary lock where it is left out',
    'Zweitverriegelung ergänzen, wo sie fehlt',
  ],
  ['preventive', null, 'Check reels on receipt against a limit sample', 'Rollen am Eingang mit Grenzmuster prüfen'],
  [
    'read_across',
    'tool_service',
    'Look at the same applicator type on the other lines',
    'Gleichen Applikatortyp an den anderen Linien ansehen',
  ],
  [
    'read_across',
    'strain_relief',
    'Compare exit angles with the drawing of the family',
    'Austrittswinkel mit der Zeichnung der Familie vergleichen',
  ],
];
const reasons = {
  held_up: ['Spare part on order', 'Ersatzteil ist bestellt'],
  given_up: ['The line is taken down', 'Die Linie wird abgebaut'],
};

/** So many at each plant, from one stream of random values: closed ones long ago, open ones of any age, some overdue. */
export function otherActions(world: World): ActionPlan[] {
  const dice = world.dice('actions');
  const codes = [...new Set(world.programs.map(({ plant }) => plant.code))];
  return codes.flatMap((plant) =>
    Array.from({ length: 8 }, (_, place): ActionPlan => {
      const german = plant === 'LEJ' ? 1 : 0;
      const [kind, prevention, english, deutsch] = dice.pick(work);
      const closed = place < 3;
      const opened = closed ? dice.whole(90, 300) : dice.whole(2, 80);
      const due = opened - dice.whole(7, 45);
      const state: ActionState = closed
        ? place === 2
          ? 'given_up'
          : 'verified'
        : dice.pick(['agreed', 'under_way', 'under_way', 'held_up', 'carried_out']);
      return {
        ...plain,
        plant,
        kind,
        title: german ? deutsch : english,
        description: '',
        prevention,
        opened,
        due,
        state,
        reason: state === 'held_up' || state === 'given_up' ? reasons[state][german]! : null,
        hours: dice.whole(2, 40),
        byManager: dice.chance(0.3),
        evidence: german ? 'Vor Ort gezeigt, Bild bei der Linie.' : 'Shown on the line; the picture hangs there.',
      };
    }),
  );
}
