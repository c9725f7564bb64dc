/** Signals: parts, tools, plants, lots, fixture positions and cavities that fail more than they should. */
import { z } from 'zod';
import { AnalysisHead } from './analyses.ts';
import { endpoint } from './shared/endpoint.ts';
import { Interval, Reason } from './shared/estimate.ts';
import { AnalysisFilter } from './shared/filter.ts';
import { Day, Id, IdParams, Instant, Version } from './shared/scalars.ts';

const tag = 'signals';

export const signalKinds = [
  'plant',
  'housing',
  'terminal',
  'tool',
  'lot',
  'housingLot',
  'fixturePosition',
  'cavity',
] as const;
export const SignalKind = z.enum(signalKinds);
export type SignalKind = z.infer<typeof SignalKind>;

const Names = z
  .object({
    plant: z.string().nullable().describe('null: over several plants'),
    housing: z.string().nullable(),
    terminal: z.string().nullable(),
    tool: z.string().nullable(),
    lot: z.string().nullable(),
    housingLot: z.string().nullable(),
    fixturePosition: z.string().nullable(),
    cavity: z.string().nullable(),
  })
  .describe('what is combined, in words of the plant; null where it plays no part');

/** Filter fields that, beside those asked with, open the reports of a signal. */
const Opens = z.record(z.string(), z.array(z.string()));

const Found = z.object({
  key: z.string(),
  kind: SignalKind,
  names: Names,
  plantId: Id.nullable(),
  opens: Opens,
  observed: z.int().describe('reports'),
  expected: z.number(),
  basis: z
    .enum(['exposure', 'share'])
    .describe(
      'expected from the terminals inserted, or from an equal share among its peers where production says nothing',
    ),
  peers: z.int().nullable().describe('members that share, where `basis` is share'),
  ratio: z.number().describe('observed ÷ expected, drawn towards what is usual'),
  interval: Interval,
  adjustedP: z.number().describe('false discovery rate at which it just counts as a signal'),
  excessAtLeast: z.number().describe('reports beyond the expected that the lower limit leaves; the ranking'),
});

const Since = z.union([
  z.object({
    day: Day.describe('first day of the first week after the change'),
    low: Day,
    high: Day,
    confidence: z.number(),
    ratio: z.number().nullable().describe('rate after ÷ before'),
    reason: z.null(),
  }),
  z.object({
    day: z.null(),
    reason: z.enum([...Reason.options, 'steady']).describe('`steady`: no change within the weeks looked at'),
  }),
]);

export const Signal = Found.extend({
  since: Since,
  echoes: z.array(Found.extend({ shared: z.int().describe('reports in both') })).describe('explained by this one'),
  back: z.boolean().describe('was called “not news” and has grown since'),
});
export type Signal = z.infer<typeof Signal>;
export type SignalFound = z.infer<typeof Found>;

export const Silence = z.object({
  id: Id,
  key: z.string(),
  plantId: Id.nullable(),
  label: z.string(),
  reason: z.string(),
  until: Day.describe('day on which it may come back'),
  observed: z.int(),
  expected: z.number(),
  ratio: z.number().describe('when it was silenced; it comes back where the lower limit of the ratio lies above'),
  silencedAt: Instant,
  silencedBy: z.string(),
  version: Version,
});
export type Silence = z.infer<typeof Silence>;

export const Signals = AnalysisHead.extend({
  falseDiscoveryRate: z.number(),
  lookedBack: Day.describe('first day that the dating of changes looks at'),
  tested: z.int(),
  withoutExpectation: z.int(),
  reports: z.int(),
  signals: z.array(Signal).describe('most excess first'),
  more: z.int().describe('signals of less excess that are not listed'),
  silenced: z.array(z.object({ silence: Silence, signal: Found.nullable() })),
});
export type Signals = z.infer<typeof Signals>;

export const findSignals = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/signals',
  access: 'analyses.read',
  tag: 'analyses',
  summary: 'What fails more than it should: a short ranked list with false alarms held at 10 %',
  query: AnalysisFilter,
  response: Signals,
});

export const silenceSignal = endpoint({
  method: 'POST',
  path: '/api/v1/signals/silences',
  access: 'signals.write',
  tag,
  summary:
    'Call a signal “not news” until a day, with a reason; it comes back earlier when it grows beyond what it is now',
  write: 'create',
  status: 201,
  query: AnalysisFilter,
  body: z.object({
    key: z.string().min(1).max(300),
    reason: z.string().trim().min(3).max(500),
    until: Day.describe('at most a year away'),
  }),
  response: Silence,
});

export const endSilence = endpoint({
  method: 'POST',
  path: '/api/v1/signals/silences/:id/end',
  access: 'signals.write',
  tag,
  summary: 'Let a silenced signal be news again',
  write: 'update',
  params: IdParams,
  response: Silence,
});
