/** What a weekly review shows, language-neutral: this is what is frozen, so a change of it takes a new `schema`. */
import { z } from 'zod';
import { ActionKind, ActionRow, ActionState } from './actions.ts';
import { AnalysisHead, Week } from './analyses.ts';
import { ComplaintLine } from './complaints.ts';
import { EffectVerdict } from './effects.ts';
import { Gate, Gates } from './gates.ts';
import { Period } from './shared/change.ts';
import { Estimate } from './shared/estimate.ts';
import { Day, Id, Instant } from './shared/scalars.ts';
import { Signal, Signals } from './signals.ts';
import { Stage } from './taxonomy.ts';
import { WhatIfSummary } from './what-if.ts';

const Filter = z.string().describe('query string of the shared filter; opens what is counted');

export const promiseStates = ['kept', 'kept_late', 'broken', 'given_up', 'not_due'] as const;
export const Promised = ActionRow.pick({
  id: true,
  number: true,
  plantCode: true,
  title: true,
  kind: true,
  owner: true,
  dueOn: true,
  state: true,
}).extend({
  week: Day.describe('first day of the week whose review decided it'),
  doneOn: Day.nullable().describe('carried out'),
  promise: z.enum(promiseStates).describe('kept: carried out by its day; broken: past its day and not carried out'),
});
export type Promised = z.infer<typeof Promised>;

export const Decision = z.object({
  id: Id.describe('of the action'),
  number: z.string(),
  plantId: Id,
  plantCode: z.string(),
  kind: ActionKind,
  title: z.string(),
  description: z.string().nullable(),
  owner: z.string(),
  dueOn: Day,
  state: ActionState,
  decidedAt: Instant,
  decidedBy: z.string(),
});
export type Decision = z.infer<typeof Decision>;

const SignalLine = Signal.pick({
  key: true,
  kind: true,
  names: true,
  observed: true,
  expected: true,
  basis: true,
  ratio: true,
  interval: true,
  plantId: true,
  opens: true,
  peers: true,
  adjustedP: true,
  excessAtLeast: true,
  since: true,
  back: true,
}).extend({
  echoes: z.int().describe('other combinations that this one explains'),
  filter: Filter,
});
export type SignalLine = z.infer<typeof SignalLine>;

const GateLine = Gate.pick({ stage: true, foundHere: true, foundLater: true, effectiveness: true, matured: true });
const Route = z.object({ origin: Stage, found: Stage, reports: z.int(), share: Estimate, filter: Filter });

const ComplaintShown = ComplaintLine.pick({
  id: true,
  number: true,
  plantCode: true,
  customerCode: true,
  title: true,
  receivedAt: true,
  safety: true,
  safetySeen: true,
  next: true,
});
const OverdueAction = ActionRow.pick({
  id: true,
  number: true,
  plantCode: true,
  title: true,
  owner: true,
  dueOn: true,
  daysOverdue: true,
});
const EffectLine = ActionRow.pick({ id: true, number: true, plantCode: true, title: true }).extend({
  verdict: EffectVerdict,
  cleanPoint: Day,
  recurrences: z.int().describe('reports since the clean point that the action should have prevented'),
  changed: z.boolean().describe('said for the first time in this week'),
});
export type EffectLine = z.infer<typeof EffectLine>;

/** What the figures were counted from. */
export const DataVersion = z.object({
  figuresAt: Instant,
  lastChange: z.object({ id: Id, at: Instant }).nullable().describe('newest entry of the audit trail of the plants'),
  reports: z.int().describe('failure reports of the plants on record, voided ones left out'),
  terminalsInserted: z.int().describe('production of the plants on record'),
  application: z.string(),
  migration: z.string().describe('newest change of the database’s structure'),
});
export type DataVersion = z.infer<typeof DataVersion>;

export const ReviewContent = AnalysisHead.extend({
  schema: z.literal(1),
  group: z.boolean(),
  places: z.array(z.object({ id: Id, code: z.string(), name: z.string(), zone: z.string() })),
  compared: Period,
  lookedBack: Period.describe('the thirteen weeks that signals and gates are judged over'),
  data: DataVersion,
  promises: z.array(Promised),
  signals: Signals.pick({ falseDiscoveryRate: true, tested: true }).extend({
    list: z.array(SignalLine),
    more: z.int(),
    silenced: z.int().describe('called “not news”'),
  }),
  headlines: Week.shape.headlines,
  causes: Week.shape.topCauses,
  costliest: Week.shape.costliest,
  waiting: Week.shape.decisions,
  escapes: z.object({
    known: z.int().describe('reports of the week with a known origin'),
    passed: z
      .array(z.object({ gates: z.int(), reports: z.int(), share: Estimate, filter: Filter }))
      .describe('reports that passed at least this many gates'),
    routes: z.array(Route).describe('most reports first, of those found after the stage that made them'),
    gates: z.array(GateLine),
    next: Gates.shape.next,
  }),
  prevention: z.array(
    WhatIfSummary.pick({
      id: true,
      name: true,
      plantCode: true,
      currency: true,
      computedAt: true,
      horizonYears: true,
    }).extend({
      netPerYear: Estimate,
      paybackYears: Estimate,
      probabilityPays: z.number().nullable(),
    }),
  ),
  complaints: z.object({
    open: z.int(),
    overdue: z.int(),
    short: z.int(),
    paused: z.int(),
    safetyUnseen: z.int(),
    list: z.array(ComplaintShown).describe('the clock that runs out first, first'),
  }),
  actions: z.object({ open: z.int(), overdue: z.int(), reopened: z.int(), list: z.array(OverdueAction) }),
  effects: z.object({
    held: z.int(),
    notShownYet: z.int(),
    didNotHold: z.int(),
    list: z.array(EffectLine),
  }),
  gaps: Week.shape.gaps,
  decisions: z.array(Decision),
});
export type ReviewContent = z.infer<typeof ReviewContent>;
