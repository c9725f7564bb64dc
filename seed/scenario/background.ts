import type { Cause } from '#contracts/taxonomy.ts';
import type { Dice, Weights } from '../random.ts';
import type { Program, Run } from '../world.ts';
import type { Fault } from './fault.ts';

type Known = Exclude<Cause, 'undetermined'>;

interface Background {
  /** reports per million terminals inserted, over the group */
  ppm: number;
  subCauses: Weights<string>;
  origins: Weights<string>;
}

/** What always happens somewhere. Invented rates and shares. */
const background: Record<Known, Background> = {
  partial_seat: {
    ppm: 29.5,
    subCauses: { not_pushed_home: 46, lock_left_open: 19, insulation_blocks: 16, lock_forced: 11, seal_blocks: 8 },
    origins: { 4: 85, 5: 15 },
  },
  tooling: {
    ppm: 20,
    subCauses: {
      crimp_height: 34,
      bent_terminal: 24,
      setup: 17,
      carrier_tab_long: 11,
      worn_applicator: 7,
      wire_out_of_range: 4,
      wrong_applicator: 3,
    },
    origins: { 2: 1 },
  },
  handling: {
    ppm: 14,
    subCauses: { lance_bent: 40, leads_tangled: 25, bulk_box: 14, reel_crushed: 13, dropped: 8 },
    origins: { 3: 80, 1: 20 },
  },
  misinsertion: {
    ppm: 9,
    subCauses: { wrong_cavity: 52, wrong_way_up: 21, over_inserted: 16, removal_tool_damage: 11 },
    origins: { 4: 1 },
  },
  component: {
    ppm: 6.2,
    subCauses: {
      housing_short_moulded: 38,
      housing_flash: 28,
      terminal_stamped_low: 17,
      lance_low: 11,
      material: 6,
    },
    origins: { 1: 1 },
  },
  wire_dress: {
    ppm: 5.4,
    subCauses: { tie_too_near: 34, sharp_exit: 30, wire_too_short: 18, wire_pulled: 12, no_strain_relief: 6 },
    origins: { 7: 1 },
  },
  probe_damage: {
    ppm: 3.2,
    subCauses: { probe_worn: 45, probe_off_axis: 33, over_travel: 17, probe_oversize: 5 },
    origins: { 6: 1 },
  },
  application_limit: {
    ppm: 2.1,
    subCauses: { vibration: 44, load_above_rating: 27, no_secondary_lock: 18, temperature: 11 },
    origins: { none: 1 },
  },
  adhesive: {
    ppm: 1.1,
    subCauses: { coating_in_cavity: 38, hot_melt: 34, glue_in_rework: 18, latch_wetted: 10 },
    origins: { 7: 3, 4: 1 },
  },
};
const known = Object.keys(background) as Known[];

/** How a part's design bends the group's rates. */
function partFactor({ housing, terminal }: Program, cause: Known): number {
  const lance = terminal.style === 'terminal_lance';
  const lock = housing.lock;
  if (cause === 'partial_seat') return { two_piece: 0.55, preassembled: 0.9, separate: 1.1, none: 1.3 }[lock];
  if (cause === 'handling') return lance ? 1.35 : 0.6;
  if (cause === 'wire_dress') return terminal.size >= 280 ? 1.5 : 0.8;
  if (cause === 'application_limit') return lock === 'none' ? 2.2 : 0.8;
  return 1;
}

const intensities = new WeakMap<Program, Record<Known, number>>();
function intensityOf(program: Program): Record<Known, number> {
  const ready = intensities.get(program);
  if (ready) return ready;
  const ppm = (cause: Known) =>
    background[cause].ppm * (program.plant.habits[cause] ?? 1) * partFactor(program, cause) * program.proneness;
  const made = Object.fromEntries(known.map((cause) => [cause, ppm(cause)])) as Record<Known, number>;
  intensities.set(program, made);
  return made;
}

/** The background faults of one run: a Poisson count, each with its own cause. */
export function backgroundFaults(run: Run, dice: Dice): Fault[] {
  const intensity = intensityOf(run.program);
  const mean = (Object.values(intensity).reduce((sum, ppm) => sum + ppm, 0) * run.terminals) / 1e6;
  return Array.from({ length: dice.poisson(mean) }, () => {
    const cause = dice.weighted(intensity);
    const { subCauses, origins } = background[cause];
    const origin = dice.weighted(origins);
    return {
      run,
      cause,
      subCause: dice.weighted(subCauses),
      origin: origin === 'none' ? null : Number(origin),
      truth: null,
    };
  });
}
