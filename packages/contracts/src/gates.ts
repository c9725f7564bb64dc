/** Gates: how much each finds, what a fault costs by where it was made, and where better detection would pay most. */
import { z } from 'zod';
import { AnalysisHead } from './analyses.ts';
import { endpoint } from './shared/endpoint.ts';
import { Estimate, Reason } from './shared/estimate.ts';
import { AnalysisFilter } from './shared/filter.ts';
import { each, MinorUnits } from './shared/scalars.ts';
import { Stage, stages } from './taxonomy.ts';

export const gateMoney = ['booked', 'withEstimates'] as const;
export const GateMoney = z.enum(gateMoney);
export type GateMoney = z.infer<typeof GateMoney>;

const gateNames = stages.slice(0, -1);
const PointCost = z.string().refine((text) => {
  const [stage, minor] = text.split(':');
  return gateNames.some((name) => name === stage) && /^\d{1,13}$/.test(minor ?? '');
}, 'must be a gate, a colon and whole minor units, such as insertion:250000');

export const GatesQuery = AnalysisFilter.extend({
  money: GateMoney.default('withEstimates').describe('what a fault is taken to cost where it is found'),
  pointCost: each(PointCost)
    .optional()
    .describe('`gate:minor`, repeated: what one more percentage point of detection costs a year there'),
});

export const Gate = z.object({
  stage: Stage,
  foundHere: z.int(),
  foundLater: z.int().describe('made here or before and found later, the field as found in the period'),
  effectiveness: Estimate.describe('as reported: found here ÷ (found here + found later)'),
  foundInsideLater: z.int().describe('made here or before and found later, before the field'),
  fieldBuilt: z
    .int()
    .describe('made here or before, built in the period and reported from the field by `maturity.until`'),
  fieldToCome: z.number().nullable().describe('the same, still to be reported; expected, null where it cannot be said'),
  matured: Estimate.describe(
    'found here ÷ (found here + found later inside + field of what was built in the period, whole)',
  ),
  faultsPerYear: Estimate.describe('faults that reach this gate in a year, those still to be reported included'),
  onePoint: Estimate.describe('saved in a year by one more percentage point found here, minor units'),
  pointCostMinor: MinorUnits.nullable(),
  perMoneySpent: Estimate.nullable().describe('saved per unit of money spent; null where the cost is not given'),
  probabilityBest: z.number().describe('probability that the next money does most good here'),
});
export type Gate = z.infer<typeof Gate>;

export const Gates = AnalysisHead.extend({
  money: GateMoney,
  reports: z.int().describe('found in the period, with a known origin'),
  withoutOrigin: z.int().describe('found in the period without a known origin: they cannot be placed'),
  gates: z.array(Gate),
  made: z.array(
    z.object({
      stage: Stage,
      costOfOneFault: Estimate.describe('expected cost of one fault made here, minor units'),
      reachesField: Estimate.describe('probability that it reaches the field'),
    }),
  ),
  found: z
    .array(
      z.object({
        stage: Stage,
        reports: z.int().describe('with a cost, booked or estimated'),
        bookedMinor: z.number().nullable().describe('mean per report found there'),
        estimateMinor: z.number().nullable().describe('mean per report found there, or what stands in for it'),
        basis: z
          .enum(['reports', 'standard', 'neighbour', 'none'])
          .describe(
            'means of the reports found there; nothing was found: the plants’ standard cost of rework; neither: the cost of the nearest gate; none known',
          ),
      }),
    )
    .describe('what one fault costs where it is found'),
  maturity: z.object({
    until: z.iso.date().describe('field reports found before this day are counted'),
    reported: z
      .number()
      .nullable()
      .describe('share of the field faults of what was built in the period that is reported and has a build date'),
    reason: Reason.nullable(),
    pattern: z.int().describe('field reports that the pattern of delay rests on, all of the plants'),
    withBuildDate: z.int().describe('field reports found since the period began that have a build date'),
    withoutBuildDate: z.int().describe('those that have none; the share reported is lowered accordingly'),
  }),
  next: z.object({
    stage: Stage.nullable().describe(
      'the gate where the next money does most good; null where the data do not separate them',
    ),
    candidates: z.array(Stage).describe('the gates that together hold 95 % of the probability, likeliest first'),
    perMoney: z.boolean().describe('ranked per money spent; otherwise per point of detection, whatever it costs'),
  }),
});
export type Gates = z.infer<typeof Gates>;

export const gates = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/gates',
  access: 'analyses.read',
  tag: 'analyses',
  summary: 'How much each gate finds, the field still to come included, and what better detection would be worth',
  query: GatesQuery,
  response: Gates,
});
