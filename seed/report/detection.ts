import type { Cause } from '#contracts/taxonomy.ts';
import { type PlantCode, type PlantPlan, plants } from '../group/plants.ts';
import { stagePlans } from '../group/stages.ts';
import type { Dice } from '../random.ts';
import type { Detection, Fault } from '../scenario/fault.ts';

/** Chance that a stage notices a fault that reaches it. Invented. */
const usual: Record<Exclude<Cause, 'undetermined'>, Detection> = {
  tooling: { 2: 0.38, 3: 0.05, 4: 0.32, 5: 0.36, 6: 0.46, 7: 0.15, 8: 0.5, 9: 0.05 },
  handling: { 4: 0.5, 5: 0.38, 6: 0.45, 7: 0.1, 8: 0.5, 9: 0.05 },
  partial_seat: { 5: 0.62, 6: 0.5, 7: 0.2, 8: 0.5, 9: 0.05 },
  misinsertion: { 5: 0.4, 6: 0.8, 7: 0.2, 8: 0.7, 9: 0.05 },
  probe_damage: { 8: 0.75, 9: 0.06 },
  wire_dress: { 8: 0.66, 9: 0.1 },
  adhesive: { 8: 0.55, 9: 0.05 },
  component: { 1: 0.27, 2: 0.2, 3: 0.04, 4: 0.4, 5: 0.4, 6: 0.4, 7: 0.1, 8: 0.5, 9: 0.05 },
  application_limit: { 8: 0.35 },
};

/** Share of the faults found outside that come back from the field; the rest are seen on the customer's line. */
const usualFieldShare: Partial<Record<Cause, number>> = {
  application_limit: 0.85,
  adhesive: 0.6,
  wire_dress: 0.6,
  probe_damage: 0.55,
  partial_seat: 0.4,
  misinsertion: 0.15,
};

const commonStages = new Map(
  plants.map(({ code }) => [code, [...new Set(stagePlans[code].map(([, , common]) => common))].sort((a, b) => a - b)]),
);
export const commonStagesOf = (plant: PlantCode): readonly number[] => commonStages.get(plant)!;

/** Gates that are better (or worse) at one plant: Querétaro's quality wall before shipping, Suzhou's optical lock check. */
const plantGates: Partial<Record<PlantCode, Detection>> = { QRO: { 9: 0.3 }, SUZ: { 5: 0.5 } };

export interface Finding {
  /** common stage */
  found: number;
  source: 'line' | 'audit' | 'customer' | 'field';
}

/** Walks the plant's stages from the one that made the fault, until one notices it. */
export function findStage(fault: Fault, plant: PlantPlan, dice: Dice): Finding {
  const detection = fault.detection ?? usual[fault.cause as keyof typeof usual];
  for (const stage of commonStagesOf(plant.code)) {
    const own = fault.detection ? undefined : plantGates[plant.code]?.[stage];
    const chance = detection[stage] === undefined ? 0 : (own ?? detection[stage]);
    if (stage < 10 && stage >= (fault.origin ?? 8) && dice.chance(chance))
      return { found: stage, source: stage === 9 || dice.chance(0.04) ? 'audit' : 'line' };
  }
  const field = dice.chance(fault.fieldShare ?? usualFieldShare[fault.cause] ?? 0.35);
  return { found: 10, source: field ? 'field' : 'customer' };
}
