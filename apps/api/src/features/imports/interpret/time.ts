export interface TimeOfDay {
  /** `HH:MM:SS`, 24 hours. */
  clock: string;
  /** `+02:00` or `Z` where the text states it; null: the plant's own time. */
  offset: string | null;
}

const pattern =
  /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d{1,9})?)?\s*(am|pm|a\.m\.|p\.m\.|uhr)?\s*(z|utc|[+-]\d{2}:?\d{2})?$/i;

export function readTime(text: string): TimeOfDay | null {
  const match = pattern.exec(text.trim());
  if (!match) return null;
  const [, hours, minutes, seconds = '00', half = '', zone] = match;
  const hour = hourOf(Number(hours), half.toLowerCase());
  if (hour === null || Number(minutes) > 59 || Number(seconds) > 59) return null;
  return { clock: `${String(hour).padStart(2, '0')}:${minutes}:${seconds}`, offset: zone ? offsetOf(zone) : null };
}

function hourOf(hour: number, half: string): number | null {
  if (half.startsWith('a') || half.startsWith('p')) {
    if (hour < 1 || hour > 12) return null;
    return (hour % 12) + (half.startsWith('p') ? 12 : 0);
  }
  return hour < 24 ? hour : null;
}

const offsetOf = (zone: string): string =>
  /^(z|utc)$/i.test(zone) ? 'Z' : zone.length === 5 ? `${zone.slice(0, 3)}:${zone.slice(3)}` : zone;
