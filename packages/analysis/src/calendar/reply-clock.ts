import { addWorkingDays, addWorkingMinutes, type WorkingCalendar, workingMinutesBetween } from './working-time.ts';

export type ClockLength = { amount: number; unit: 'hours' | 'days' };
export type Pause = { from: Date; to: Date };
export type Reckoned = {
  dueAt: Date;
  /** a quarter of the working time is left */
  shortAt: Date;
  /** a tenth is left */
  urgentAt: Date;
};

/** Parts of a clock's working time at which somebody is told. Common practice, no source. */
const shortPart = 1 / 4;
const urgentPart = 1 / 10;

/**
 * When a reply is due that may take so long in working time, given its pauses so far. A pause keeps the working minutes that
 * were left; it moves nothing once the clock has run out. Definition.
 *
 * @param pauses ended ones, in order of time
 */
export function reckonClock(
  { amount, unit }: ClockLength,
  startedAt: Date,
  pauses: readonly Pause[],
  calendar: WorkingCalendar,
): Reckoned {
  const unpaused =
    unit === 'days' ? addWorkingDays(startedAt, amount, calendar) : addWorkingMinutes(startedAt, amount * 60, calendar);
  const whole = workingMinutesBetween(startedAt, unpaused, calendar);
  const stretches = [startedAt, ...pauses.map(({ to }) => to)];
  const at = (used: number): Date => {
    let left = used;
    for (const [index, begun] of stretches.entries()) {
      const paused = pauses[index]?.from;
      const run = paused ? workingMinutesBetween(begun, paused, calendar) : Number.POSITIVE_INFINITY;
      if (left <= run) return addWorkingMinutes(begun, left, calendar);
      left -= run;
    }
    return unpaused;
  };
  return { dueAt: at(whole), shortAt: at(whole * (1 - shortPart)), urgentAt: at(whole * (1 - urgentPart)) };
}
