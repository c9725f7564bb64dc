import type { Day } from '#analysis/calendar/day.ts';
import type { Sample } from './samples.ts';

export interface PhaseStart {
  key: string;
  because: 'action' | 'chosen';
  label: string | null;
}

/** A phase needs two points for limits. */
const fewest = 2;

/** The first point at or after each day, for days that leave every phase enough points. Chosen days go before actions. */
export function phaseStarts(
  samples: readonly Sample[],
  days: readonly { day: Day; because: PhaseStart['because']; label: string | null }[],
): PhaseStart[] {
  const taken = new Map<number, PhaseStart>();
  for (const { day, because, label } of days.toSorted((a, b) => (a.because < b.because ? 1 : -1))) {
    const place = samples.findIndex(({ from }) => from >= day);
    const borders = [0, samples.length, ...taken.keys()];
    if (place <= 0 || borders.some((border) => Math.abs(border - place) < fewest)) continue;
    taken.set(place, { key: samples[place]!.key, because, label });
  }
  return [...taken].sort(([a], [b]) => a - b).map(([, start]) => start);
}
