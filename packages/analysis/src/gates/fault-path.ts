import { absorbingChain } from './absorbing-chain.ts';

export type FaultPath = {
  /** found[origin][stage]: probability that a fault made at a stage is found at a stage; the last is the field */
  found: number[][];
  /** probability to reach the field, by stage that made it */
  reachesField: number[];
};

/**
 * Where a fault ends, by the stage that makes it: each gate from that stage on finds it with its effectiveness or passes it
 * on; what passes all gates is found in the field. An absorbing chain with one transient state a gate.
 *
 * @param effectiveness by gate in order, 0 to 1; the field is not one of them
 */
export function faultPath(effectiveness: readonly number[]): FaultPath {
  const gates = effectiveness.length;
  const moves = effectiveness.map((found, gate) => effectiveness.map((_, next) => (next === gate + 1 ? 1 - found : 0)));
  const ends = effectiveness.map((found, gate) =>
    Array.from({ length: gates + 1 }, (_, end) => {
      if (end === gate) return found;
      return end === gates && gate === gates - 1 ? 1 - found : 0;
    }),
  );
  const { absorbed } = absorbingChain(moves, ends);
  return { found: absorbed, reachesField: absorbed.map((row) => row[gates]!) };
}

/** Expected cost of one fault by the stage that makes it, last the field itself: Σ probability × cost of being found there. */
export function costOfOneFault({ found }: FaultPath, costByStage: readonly number[]): number[] {
  const byGate = found.map((row) =>
    row.reduce((sum, probability, stage) => sum + probability * costByStage[stage]!, 0),
  );
  return [...byGate, costByStage.at(-1)!];
}
