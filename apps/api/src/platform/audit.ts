import { newId } from './ids.ts';
import type { Unit } from './unit.ts';

export interface Change {
  action: string;
  entity: string;
  entityId: string;
  /** What people call it: a report number, a code, a name. */
  label: string;
  plantId: string | null;
  before: object | null;
  after: object | null;
}

/** Values as JSON holds them: whole 64-bit integers as numbers, instants as strings; secrets never. */
function asJson(value: object | null): object | undefined {
  if (value === null) return undefined;
  const text = JSON.stringify(value, (key, it) =>
    /password|secret/i.test(key) ? undefined : typeof it === 'bigint' ? Number(it) : it,
  );
  return JSON.parse(text);
}

/** Writes who changed what, in the transaction of the change itself. */
export async function recordChange(unit: Unit, change: Change): Promise<void> {
  await unit.tx.auditEntry.create({
    data: {
      id: newId(),
      at: unit.at,
      actorId: unit.actor.id,
      actor: unit.actor.name,
      action: change.action,
      entity: change.entity,
      entityId: change.entityId,
      label: change.label,
      plantId: change.plantId,
      before: asJson(change.before),
      after: asJson(change.after),
    },
  });
}
