import type { Grant } from '#contracts/people.ts';
import { allows, type Permission } from '#contracts/permissions.ts';
import { notFound, problem } from './problems.ts';

/** Who makes a request: a person with a session, or a machine with a token. */
export interface Actor {
  id: string;
  kind: 'person' | 'token';
  name: string;
  locale: string;
  mustChangePassword: boolean;
  grants: Grant[];
}

export type PlantScope = 'all' | readonly string[];

/** The plants where the actor holds a permission. */
export function plantsWith(actor: Actor, permission: Permission): PlantScope {
  const holding = actor.grants.filter((grant) => allows(permission, grant.role));
  if (holding.some((grant) => grant.plantId === null)) return 'all';
  return [...new Set(holding.map((grant) => grant.plantId as string))];
}

export function holds(actor: Actor, permission: Permission, plantId: string): boolean {
  const scope = plantsWith(actor, permission);
  return scope === 'all' || scope.includes(plantId);
}

/** The plants asked for that are the actor's; all of the actor's when none is asked for. A foreign plant is simply not found. */
export function choosePlants(actor: Actor, permission: Permission, asked: readonly string[] | undefined): PlantScope {
  if (!asked?.length) return plantsWith(actor, permission);
  for (const plantId of asked) requirePlant(actor, permission, plantId);
  return asked;
}

/** Refuses what the role at a plant does not allow, and hides a plant that is not the actor's. */
export function requirePlant(actor: Actor, permission: Permission, plantId: string): void {
  if (holds(actor, permission, plantId)) return;
  if (holds(actor, 'masterData.read', plantId))
    throw problem(
      'not_allowed',
      'Your role at this plant does not allow it. Ask an administrator for the role you need.',
    );
  throw notFound('plant');
}

/** For what belongs to the whole group: the permission must hold for all plants. */
export function requireGroup(actor: Actor, permission: Permission): void {
  if (plantsWith(actor, permission) !== 'all')
    throw problem('not_allowed', 'This belongs to the whole group; it takes the role for all plants.');
}
