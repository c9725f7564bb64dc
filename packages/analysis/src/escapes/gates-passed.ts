/** The ten common process stages by number, 1 receiving to 10 field. Common practice, no source. */
export const allStages: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/**
 * How many gates a fault passed unnoticed: stages after the one that made it and before the one that found it.
 *
 * @param origin stage 1 to 10 that made the fault, or null when unknown
 * @param found stage 1 to 10 that noticed it
 * @param gates the stages that exist in the plant
 * @returns null when the origin is unknown or lies after the stage that found it (one of the two is wrong)
 */
export function gatesPassed(origin: number | null, found: number, gates: readonly number[] = allStages): number | null {
  if (origin === null || origin > found) return null;
  return gates.filter((gate) => gate > origin && gate < found).length;
}
