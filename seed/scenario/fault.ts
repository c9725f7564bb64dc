import type { z } from 'zod';
import type { Cause, Effect } from '#contracts/taxonomy.ts';
import type { DayNumber } from '../calendar.ts';
import type { LineCode } from '../group/lines.ts';
import type { PlantCode } from '../group/plants.ts';
import type { Dice, Weights } from '../random.ts';
import type { Run } from '../world.ts';

/** Chance that a common stage (1 to 9) notices the fault when it gets there. What passes all is found outside. */
export type Detection = Partial<Record<number, number>>;

/** What really happened, before anybody found or sorted it. */
export interface Fault {
  run: Run;
  cause: Cause;
  subCause: string;
  /** common stage that made it; null for a limit of the design */
  origin: number | null;
  /** key of the planted truth; null for background */
  truth: string | null;
  detection?: Detection;
  /** of those found outside, the share that come back from the field instead of the customer's line */
  fieldShare?: number;
  /** the tool that all such faults have in common */
  tool?: string;
  fixturePosition?: string;
  /** cavities it can be in */
  cavities?: readonly string[];
  serials?: readonly [string, string];
  effects?: Weights<z.infer<typeof Effect>>;
}

/** A cause planted at one place and time. */
export interface Truth {
  key: string;
  /** expected extra reports per million terminals of a run; 0 elsewhere */
  excess(run: Run): number;
  shape(run: Run, dice: Dice): Omit<Fault, 'run' | 'truth'>;
}

/** Whether a run was built at one of these lines, on `from <= day < to`. */
export const isAt = (
  { program, day }: Run,
  plant: PlantCode,
  lines: readonly LineCode[],
  from: DayNumber,
  to: DayNumber,
): boolean => program.plant.code === plant && lines.includes(program.line) && day >= from && day < to;
