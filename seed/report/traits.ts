import type { z } from 'zod';
import type { Cause, Disposition, Effect, LockState } from '#contracts/taxonomy.ts';
import type { Dice, Weights } from '../random.ts';
import type { Fault } from '../scenario/fault.ts';
import type { Finding } from './detection.ts';

type EffectWord = z.infer<typeof Effect>;
type LockWord = z.infer<typeof LockState>;
export type DispositionWord = z.infer<typeof Disposition>;

const effects: Record<Exclude<Cause, 'undetermined'>, Weights<EffectWord>> = {
  tooling: { open_circuit: 45, intermittent: 18, high_resistance: 17, no_effect: 14, mating_blocked: 6 },
  handling: { open_circuit: 50, mating_blocked: 18, intermittent: 16, no_effect: 12, high_resistance: 4 },
  partial_seat: { open_circuit: 58, intermittent: 20, mating_blocked: 12, seal_out: 6, no_effect: 4 },
  misinsertion: { open_circuit: 52, neighbour_short: 22, mating_blocked: 14, no_effect: 12 },
  probe_damage: { intermittent: 46, high_resistance: 30, open_circuit: 20, heating: 4 },
  wire_dress: { intermittent: 48, open_circuit: 30, high_resistance: 12, seal_out: 10 },
  adhesive: { intermittent: 40, high_resistance: 32, mating_blocked: 16, open_circuit: 12 },
  component: { open_circuit: 48, mating_blocked: 18, no_effect: 18, intermittent: 16 },
  application_limit: { intermittent: 45, heating: 22, open_circuit: 21, high_resistance: 12 },
};

/** Heavy power contacts heat up where small ones turn intermittent. */
export function effectOf({ run, cause, effects: own }: Fault, dice: Dice): EffectWord | null {
  if (dice.chance(0.04)) return null;
  const word = dice.weighted(own ?? effects[cause as keyof typeof effects]);
  const power = run.program.terminal.size >= 480;
  return power && word === 'high_resistance' && dice.chance(0.7) ? 'heating' : word;
}

export function lockStateOf({ run, cause }: Fault, { source }: Finding, dice: Dice): LockWord {
  if (run.program.housing.lock === 'none') return 'none_fitted';
  if (source === 'field' && dice.chance(0.4)) return 'unknown';
  return cause === 'partial_seat'
    ? dice.weighted({ would_not_close: 32, open: 28, forced: 16, closed: 14, unknown: 6, missing: 4 })
    : dice.weighted({ closed: 76, unknown: 13, open: 6, would_not_close: 3, missing: 2 });
}

/** `age` is in days: what came in lately may still wait for its disposition. */
export function dispositionOf({ source }: Finding, age: number, dice: Dice): DispositionWord {
  const outside = source === 'customer' || source === 'field';
  if (dice.chance(outside ? Math.exp(-age / 12) : 0.35 * Math.exp(-age / 3))) return 'pending';
  return outside
    ? dice.weighted({ replaced: 44, returned: 32, sorted: 12, scrapped: 9, reworked: 3 })
    : dice.weighted({ reworked: 56, scrapped: 29, replaced: 8, sorted: 4, used_as_is: 3 });
}

/** How many terminals one report is about: mostly one. */
export function quantityOf({ source }: Finding, dice: Dice): number {
  const size = source === 'field' ? 'one' : dice.weighted({ one: 74, few: 20, some: 5, many: 1 });
  if (size === 'one') return 1;
  if (size === 'few') return dice.whole(2, 3);
  return size === 'some' ? dice.whole(4, 9) : dice.whole(10, 30);
}

/** Terminals looked at to find them; null where nobody wrote it down. */
export function inspectedOf(quantity: number, cavityCount: number, { source }: Finding, dice: Dice): number | null {
  if (dice.chance(source === 'field' ? 0.4 : 0.15)) return null;
  if (source === 'field') return Math.max(quantity, cavityCount);
  return dice.chance(0.3) ? quantity : quantity * dice.whole(2, 60);
}

/** The cavities named: one for a single terminal; several either on one face or one cavity on several harnesses. */
export function cavitiesOf(fault: Fault, quantity: number, dice: Dice): string[] {
  if (dice.chance(0.07)) return [];
  const all = fault.cavities ?? fault.run.program.cavities;
  const edge = [all[0]!, all.at(-1)!];
  const pick = () => (dice.chance(0.12) ? dice.pick(edge) : dice.pick(all));
  const marks = quantity === 1 || dice.chance(0.5) ? 1 : Math.min(quantity, 4);
  return [...new Set(Array.from({ length: marks }, pick))].sort();
}
