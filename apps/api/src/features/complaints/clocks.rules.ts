import type { Pause } from '#analysis/calendar/reply-clock.ts';
import { type WorkingCalendar, workingMinutesBetween } from '#analysis/calendar/working-time.ts';
import type { ClockState } from '#contracts/complaint-parts.ts';

export interface RunningClock {
  dueAt: Date;
  shortAt: Date;
  pausedAt: Date | null;
  answeredAt: Date | null;
}

export function clockState({ dueAt, shortAt, pausedAt, answeredAt }: RunningClock, at: Date): ClockState {
  if (answeredAt) return answeredAt <= dueAt ? 'answered_in_time' : 'answered_late';
  if (pausedAt) return 'paused';
  if (at > dueAt) return 'overdue';
  return at >= shortAt ? 'short' : 'running';
}

/** Whole working minutes until due at the moment that counts: the answer, else the pause, else now. Below zero when late. */
export const minutesLeft = (
  { dueAt, pausedAt, answeredAt }: RunningClock,
  at: Date,
  calendar: WorkingCalendar,
): number => Math.floor(workingMinutesBetween(answeredAt ?? pausedAt ?? at, dueAt, calendar));

/** The ended pauses of a clock, from what was done to it, in order of time. */
export function pausesOf(events: readonly { step: string; at: Date }[]): Pause[] {
  const pauses: Pause[] = [];
  let from: Date | null = null;
  for (const { step, at } of events) {
    if (step === 'paused') from = at;
    if (step === 'resumed' && from) {
      pauses.push({ from, to: at });
      from = null;
    }
  }
  return pauses;
}

/** Who is to be told by now: 1 the owner, 2 the managers as well. */
export const levelAt = ({ shortAt, urgentAt }: { shortAt: Date; urgentAt: Date }, at: Date): 0 | 1 | 2 =>
  at >= urgentAt ? 2 : at >= shortAt ? 1 : 0;
