/** Prevention that the trade uses, each with the causes it acts on. Common practice, no source; how much it prevents is for the plant to say. */
import type { Cause } from './taxonomy.ts';

export const preventionKinds = [
  'secondary_lock',
  'two_piece_housing',
  'push_click_pull',
  'probe_change',
  'strain_relief',
  'tool_service',
  'lead_trays',
  'own',
] as const;
export type PreventionKind = (typeof preventionKinds)[number];

export const preventionActsOn: Record<PreventionKind, readonly Cause[]> = {
  secondary_lock: ['partial_seat', 'application_limit', 'wire_dress'],
  two_piece_housing: ['partial_seat', 'misinsertion', 'application_limit', 'wire_dress'],
  push_click_pull: ['partial_seat'],
  probe_change: ['probe_damage'],
  strain_relief: ['wire_dress'],
  tool_service: ['tooling'],
  lead_trays: ['handling'],
  own: [],
};
