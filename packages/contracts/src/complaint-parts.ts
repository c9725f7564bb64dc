/** Parts of a complaint: reply clocks, consents, linked failure reports. */
import { z } from 'zod';
import { replies, timeUnits } from './reply-times.ts';
import { Day, Id, Instant, Version } from './shared/scalars.ts';
import { Effect } from './taxonomy.ts';

export const Reply = z.enum(replies);

/** How a clock stands. `short`: less than a quarter of its working time is left. */
export const clockStates = ['overdue', 'short', 'running', 'paused', 'answered_late', 'answered_in_time'] as const;
export const ClockState = z.enum(clockStates);
export type ClockState = z.infer<typeof ClockState>;
export const clockSteps = ['paused', 'resumed', 'answered', 'handed_over', 'owner_told', 'managers_told'] as const;

export const Clock = z.object({
  id: Id,
  kind: Reply,
  amount: z.int(),
  unit: z.enum(timeUnits),
  ownerId: Id,
  ownerName: z.string(),
  startedAt: Instant,
  dueAt: Instant.describe('while paused: the time it was due before the pause'),
  state: ClockState,
  minutesLeft: z.int().describe('working minutes until due; below zero when overdue; at the answer, if answered'),
  pausedAt: Instant.nullable(),
  pauseReason: z.string().nullable(),
  answeredAt: Instant.nullable(),
  answeredBy: z.string().nullable(),
  sent: z.string().nullable().describe('what was sent to the customer'),
  events: z.array(
    z.object({
      id: Id,
      step: z.enum(clockSteps),
      at: Instant,
      actor: z.string(),
      note: z.string().nullable(),
    }),
  ),
  version: Version,
});
export type Clock = z.infer<typeof Clock>;

export const consentKinds = ['close', 'unflag'] as const;
export const Consent = z.object({
  id: Id,
  kind: z.enum(consentKinds),
  reason: z.string(),
  askedBy: z.string(),
  askedAt: Instant,
  answer: z.enum(['given', 'refused']).nullable(),
  answeredBy: z.string().nullable(),
  answeredAt: Instant.nullable(),
  note: z.string().nullable(),
  mayAnswer: z.boolean().describe('whether you may give this consent'),
});
export type Consent = z.infer<typeof Consent>;

export const LinkedReport = z.object({
  id: Id,
  number: z.string(),
  foundOn: Day,
  quantityFound: z.int(),
  effect: Effect.nullable(),
  cause: z.string().nullable(),
  voided: z.boolean(),
  findingsTaken: z.int().describe('findings on the evidence checklist that were answered'),
  confirmed: z.boolean().describe('a person has confirmed its cause from the evidence'),
});
export type LinkedReport = z.infer<typeof LinkedReport>;
