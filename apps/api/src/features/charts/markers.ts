import type { Asked } from '#api/features/analyses/asked.service.ts';
import { fieldsOf } from '#api/features/analyses/carriers.ts';
import type { Charts, Marker } from '#contracts/charts.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { type DatedAction, readActions, readNewLots, readServices } from './charts.queries.ts';

/** More marks of a kind than this hide the points. */
const most = 40;
const aims = ['cause', 'housing', 'terminal', 'tool', 'line'] as const;

/** How what an action was to prevent stands to what the filter counts. */
function fitTo(action: DatedAction, filter: Filter): 'aimed' | 'open' | 'other' {
  const both = aims.filter((aim) => action[aim] !== null && filter[aim]?.length);
  if (both.some((aim) => !filter[aim]!.some((word) => word === action[aim]))) return 'other';
  return both.length > 0 ? 'aimed' : 'open';
}

export interface Marks {
  markers: Marker[];
  left: Charts['left'];
  /** actions aimed at what the filter counts: they split phases */
  aimed: DatedAction[];
}

export async function marksOf(asked: Asked): Promise<Marks> {
  const narrowed = fieldsOf(asked.filter).some((field) => field !== 'plant');
  const [actions, services, lots] = await Promise.all([
    readActions(asked),
    narrowed ? readServices(asked) : null,
    narrowed ? readNewLots(asked) : null,
  ]);
  const fitting = actions.filter((action) => fitTo(action, asked.filter) !== 'other');
  const leave = (rows: readonly unknown[] | null) =>
    rows === null ? 'too_wide' : rows.length > most ? 'too_many' : null;
  const left = { service: leave(services), lot: leave(lots) } as const;
  const markers: Marker[] = [
    ...fitting.map(({ id, day, label }) => ({ kind: 'action' as const, id, day, label })),
    ...(left.service ? [] : services!.map((row) => ({ kind: 'service' as const, ...row }))),
    ...(left.lot ? [] : lots!.map((row) => ({ ...row, id: null }))),
  ];
  markers.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  return { markers, left, aimed: fitting.filter((action) => fitTo(action, asked.filter) === 'aimed') };
}
