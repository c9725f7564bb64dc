import { createHash } from 'node:crypto';
import { type Actor, holds, type PlantScope, plantsWith } from '#api/platform/actor.ts';
import { notFound } from '#api/platform/problems.ts';
import type { Permission } from '#contracts/permissions.ts';

/** Whose review it is: one plant's, that of several, or the group's. `key` names it in the store. */
export interface Scope {
  key: string;
  group: boolean;
  plantIds: readonly string[];
}

const digest = (ids: readonly string[]) => createHash('sha256').update(ids.join()).digest('hex');

/** All plants together are the group where they were asked for as such; a group of one plant is that plant. */
export function scopeOf(ids: readonly string[], chosen: PlantScope): Scope {
  if (ids.length === 0) throw notFound('plant');
  const plantIds = [...new Set(ids)].sort();
  const group = chosen === 'all' && plantIds.length > 1;
  return { key: group ? 'group' : plantIds.length === 1 ? plantIds[0]! : digest(plantIds), group, plantIds };
}

/** The scope of a review that is kept. */
export const scopeKept = ({ scope, plantIds }: { scope: string; plantIds: string[] }): Scope => ({
  key: scope,
  group: scope === 'group',
  plantIds,
});

/** Whether the permission holds for everything that a review shows. */
export const coversScope = (actor: Actor, permission: Permission, { group, plantIds }: Scope): boolean =>
  group ? plantsWith(actor, permission) === 'all' : plantIds.every((id) => holds(actor, permission, id));

/** Reads for a review: sees its plants and nothing else, so that what it shows does not hang on who asks. */
export const readerOf = ({ group, plantIds }: Scope): Actor => ({
  id: '00000000-0000-0000-0000-000000000000',
  kind: 'person',
  name: 'review',
  locale: 'en',
  mustChangePassword: false,
  grants: (group ? [null] : plantIds).map((plantId) => ({ role: 'viewer', plantId })),
});

/** The plants as the shared filter names them: none for the group. */
export const plantsAsked = ({ group, plantIds }: Scope): string[] | undefined => (group ? undefined : [...plantIds]);
