import type { ActionOf } from '#contracts/actions.ts';

/** Not yet carried out and not closed: what was agreed may still be changed. */
export const isChangeable = ({ state }: Pick<ActionOf, 'state'>): boolean =>
  state === 'agreed' || state === 'under_way' || state === 'held_up';
