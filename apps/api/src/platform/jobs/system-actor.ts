import type { Actor } from '#api/platform/actor.ts';

/** Who acts where nobody asked: the service itself, for everything it does by the clock. */
export const systemActor: Actor = {
  id: '00000000-0000-0000-0000-000000000000',
  kind: 'token',
  name: 'Escape Ledger',
  locale: 'en',
  mustChangePassword: false,
  grants: [{ role: 'administrator', plantId: null }],
};
