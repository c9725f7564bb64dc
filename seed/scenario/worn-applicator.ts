import type { DayNumber } from '../calendar.ts';
import type { Run } from '../world.ts';
import { isAt, type Truth } from './fault.ts';

/** An applicator wears: its crimps get worse from week to week until a new one takes its place. */
export const wornApplicator = {
  key: 'worn-applicator',
  plant: 'POZ',
  line: 'L3',
  tool: 'AP-150-2',
  successor: 'AP-150-3',
  terminal: 'TC-09L',
  /** days before the anchor */
  wears: 300,
  replaced: 170,
  /** extra reports per million at the beginning and at the end */
  ppm: [15, 560],
} as const;

export function wornApplicatorTruth(anchor: DayNumber): Truth {
  const { key, plant, line, tool, terminal, ppm } = wornApplicator;
  const from = anchor - wornApplicator.wears;
  const to = anchor - wornApplicator.replaced;
  return {
    key,
    excess: (run) =>
      isAt(run, plant, [line], from, to) && run.program.terminal.code === terminal
        ? ppm[0] * (ppm[1] / ppm[0]) ** ((run.day - from) / (to - from))
        : 0,
    shape: () => ({ cause: 'tooling', subCause: 'worn_applicator', origin: 2, tool }),
  };
}

/** The applicator that crimped a run: the successor once the worn one was replaced. */
export function applicatorAt({ program, day }: Run, anchor: DayNumber): string {
  const { plant, tool, successor, replaced } = wornApplicator;
  const isWorn = program.plant.code === plant && program.applicator === tool;
  return isWorn && day >= anchor - replaced ? successor : program.applicator;
}
