/** Where the tablet stands, remembered on the tablet: plant, line, station, shift, stage, and the housings used last. */
import { useState } from 'react';
import { z } from 'zod';
import { Stage } from '#contracts/taxonomy.ts';

const Place = z.object({
  /** All of it has been chosen and confirmed once. */
  settled: z.boolean(),
  plantId: z.string().nullable(),
  lineId: z.string().nullable(),
  stageId: z.string().nullable(),
  found: Stage,
  station: z.string().nullable(),
  shift: z.string().nullable(),
  recentHousings: z.array(z.string()),
});
export type Place = z.infer<typeof Place>;

const key = 'escape-ledger.place';
const nowhere: Place = {
  settled: false,
  plantId: null,
  lineId: null,
  stageId: null,
  found: 'electrical_test',
  station: null,
  shift: null,
  recentHousings: [],
};

function read(): Place {
  try {
    return Place.parse(JSON.parse(localStorage.getItem(key) ?? ''));
  } catch {
    return nowhere;
  }
}

export const usePlace = (): readonly [Place, (patch: Partial<Place>) => void] => {
  const [place, setPlace] = useState(read);
  const change = (patch: Partial<Place>) =>
    setPlace((now) => {
      const next = { ...now, ...patch };
      localStorage.setItem(key, JSON.stringify(next));
      return next;
    });
  return [place, change];
};

/** The housing last used comes first; six are kept. */
export const usedLast = (recent: readonly string[], housingId: string | null): string[] =>
  housingId === null ? [...recent] : [housingId, ...recent.filter((id) => id !== housingId)].slice(0, 6);
