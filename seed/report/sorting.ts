import { type Cause, causeTaxonomy, stageNumber } from '#contracts/taxonomy.ts';
import type { DayNumber } from '../calendar.ts';
import type { PlantPlan } from '../group/plants.ts';
import type { Dice } from '../random.ts';
import type { Fault } from '../scenario/fault.ts';
import { proofText, reasonText } from '../text/text.ts';
import { commonStagesOf, type Finding } from './detection.ts';
import { laterInOffice, type Moment } from './timing.ts';

export interface Sorted {
  at: number;
  cause: Cause;
  subCause: string | null;
  origin: number | null;
  proof: string | null;
  reason: string | null;
}

/** What people take a cause for at first. */
export const mistakenFor: Record<Cause, Cause> = {
  tooling: 'handling',
  handling: 'tooling',
  partial_seat: 'component',
  misinsertion: 'partial_seat',
  probe_damage: 'tooling',
  wire_dress: 'partial_seat',
  adhesive: 'wire_dress',
  component: 'handling',
  application_limit: 'wire_dress',
  undetermined: 'undetermined',
};

/** The stage at this plant that stands for an origin: the nearest one before it where the plant has none. */
export const originAt = (plant: PlantPlan, origin: number | null): number | null =>
  origin === null ? null : (commonStagesOf(plant.code).findLast((stage) => stage <= origin) ?? null);

/** Every sorting of a report up to the anchor, the first at [0]: most within minutes on the line. Empty: not sorted yet, or never. */
export function sortingsOf(
  fault: Fault,
  finding: Finding,
  { plant, day, anchor, moment }: { plant: PlantPlan; day: DayNumber; anchor: DayNumber; moment: Moment },
  dice: Dice,
): Sorted[] {
  if (dice.chance(finding.source === 'field' ? 0.015 : 0.008)) return [];
  const outside = finding.source === 'customer' || finding.source === 'field';
  const wait = dice.exponential(outside ? 8 : 1.5);
  const first =
    !outside && dice.chance(0.6)
      ? { day, at: moment.reportedAt + dice.whole(1, 20) * 60_000 }
      : laterInOffice(plant, day, wait, anchor, dice);
  if (!first) return [];
  const truth = (at: number, reason: string | null): Sorted => ({
    at,
    cause: fault.cause,
    subCause: dice.chance(0.9) ? fault.subCause : null,
    origin: originAt(plant, fault.origin),
    proof: dice.chance(0.6) ? proofText(plant.language, fault.cause, dice) : null,
    reason,
  });
  const fate = dice.weighted({ right: 88, corrected: 6, wrong: 2, undetermined: 4 });
  if (fate === 'right') return [truth(first.at, null)];
  if (fate === 'undetermined') return [{ ...undetermined, at: first.at }];
  const mistake = mistakenSorting(fault, finding, plant, first.at);
  if (fate === 'wrong') return [mistake];
  const second = laterInOffice(plant, first.day, 3 + dice.exponential(9), anchor, dice);
  return second ? [mistake, truth(second.at, reasonText(plant.language, dice))] : [mistake];
}

const undetermined = { cause: 'undetermined', subCause: null, origin: null, proof: null, reason: null } as const;

function mistakenSorting(fault: Fault, { found }: Finding, plant: PlantPlan, at: number): Sorted {
  const cause = mistakenFor[fault.cause];
  const { usualOrigin } = causeTaxonomy[cause];
  const origin = usualOrigin && stageNumber(usualOrigin) <= found ? stageNumber(usualOrigin) : null;
  return { at, cause, subCause: null, origin: originAt(plant, origin), proof: null, reason: null };
}
