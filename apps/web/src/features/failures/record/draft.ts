/** What the line's form holds while somebody fills it in. */
import type { z } from 'zod';
import type { NewReport } from '#contracts/failures.ts';
import type { Housing, Plant } from '#contracts/master-data.ts';
import { dayIn } from '#web/ui/period.ts';
import type { Place } from './place.ts';

export interface DraftPhoto {
  readonly id: string;
  readonly blob: Blob;
}

export interface Draft {
  readonly housingId: string | null;
  readonly cavities: string[];
  readonly terminalId: string | null;
  readonly toolId: string | null;
  readonly effect: z.input<typeof NewReport>['effect'];
  readonly lockState: NonNullable<z.input<typeof NewReport>['lockState']>;
  readonly disposition: NonNullable<z.input<typeof NewReport>['disposition']>;
  readonly quantityFound: number;
  readonly quantityInspected: number | null;
  readonly reelLot: string | null;
  readonly housingLot: string | null;
  readonly serialFrom: string | null;
  readonly note: string | null;
  /** Only where it was not found just now. */
  readonly foundOn: string | null;
  readonly photos: readonly DraftPhoto[];
}

export const blankDraft: Draft = {
  housingId: null,
  cavities: [],
  terminalId: null,
  toolId: null,
  effect: null,
  lockState: 'unknown',
  disposition: 'pending',
  quantityFound: 1,
  quantityInspected: null,
  reelLot: null,
  housingLot: null,
  serialFrom: null,
  note: null,
  foundOn: null,
  photos: [],
};

/** The cavities picked; the quantity follows their number until somebody has set another. */
export const withCavities = (draft: Draft, cavities: string[]): Pick<Draft, 'cavities' | 'quantityFound'> => {
  const follows = draft.quantityFound === Math.max(1, draft.cavities.length);
  return { cavities, quantityFound: follows ? Math.max(1, cavities.length) : draft.quantityFound };
};

/** The report to send, found at `at` in the plant's own calendar unless the draft names another day. */
export const reportOf = (
  id: string,
  place: Place,
  draft: Draft,
  plant: Pick<Plant, 'id' | 'zone'>,
  housing: Pick<Housing, 'safetyRelevant'> | undefined,
  at: Date,
): z.input<typeof NewReport> => {
  const { photos: _, toolId, foundOn, ...fields } = draft;
  return {
    ...fields,
    id,
    plantId: plant.id,
    lineId: place.lineId,
    stageId: place.stageId,
    found: place.found,
    station: place.station,
    shift: place.shift,
    source: place.found === 'field' ? 'field' : 'line',
    toolIds: toolId === null ? [] : [toolId],
    foundOn: foundOn ?? dayIn(plant.zone, at),
    foundAt: foundOn === null ? at.toISOString() : null,
    safety: housing?.safetyRelevant ?? false,
  };
};
