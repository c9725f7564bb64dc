import type { DayNumber } from '../calendar.ts';
import type { Run, World } from '../world.ts';
import { backgroundFaults } from './background.ts';
import { bulkBoxesTruth } from './bulk-boxes.ts';
import type { Fault, Truth } from './fault.ts';
import { gluedReworkTruth } from './glued-rework.ts';
import { lowLancesTruth } from './low-lances.ts';
import { noStrainReliefTruth } from './no-strain-relief.ts';
import { oversizeProbeTruth } from './oversize-probe.ts';
import { pullCheckTruth } from './pull-check.ts';
import { wornApplicatorTruth } from './worn-applicator.ts';

export const truths = (anchor: DayNumber): Truth[] => [
  wornApplicatorTruth(anchor),
  oversizeProbeTruth(anchor),
  noStrainReliefTruth(anchor),
  gluedReworkTruth(anchor),
  lowLancesTruth(anchor),
  pullCheckTruth(anchor),
  bulkBoxesTruth(anchor),
];

/** Everything that went wrong on a run: the background and the planted truths, each from its own stream. */
export function faultMaker(world: World): (run: Run) => Fault[] {
  const background = world.dice('background');
  const planted = truths(world.anchor).map((truth) => ({ truth, dice: world.dice(truth.key) }));
  return (run) => [
    ...backgroundFaults(run, background),
    ...planted.flatMap(({ truth, dice }) => {
      const ppm = truth.excess(run);
      if (ppm === 0) return [];
      const count = dice.poisson((ppm * run.terminals) / 1e6);
      return Array.from({ length: count }, () => ({ run, truth: truth.key, ...truth.shape(run, dice) }));
    }),
  ];
}
