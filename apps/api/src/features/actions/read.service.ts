import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { notFound } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { ActionOf } from '#contracts/actions.ts';
import type { Permission } from '#contracts/permissions.ts';
import type { Tx } from '#db/client.ts';
import { findAction, findEvidence, findSteps, lockAction, type Stored } from './action.queries.ts';
import { visibleOrigin } from './origin.service.ts';

/** Verification is another person's: not the owner's, nor that of who carried it out. */
export const mayVerify = (actor: Actor, action: Stored): boolean =>
  action.state === 'carried_out' &&
  actor.kind === 'person' &&
  actor.id !== action.ownerId &&
  actor.id !== action.carriedOutBy &&
  holds(actor, 'actions.write', action.plantId);

/** An action for reading; one of a foreign plant is simply not found. */
export async function requireAction(tx: Tx, actor: Actor, id: string, at: Date): Promise<Stored> {
  const action = await findAction(tx, id, at);
  if (!action || !holds(actor, 'actions.read', action.plantId)) throw notFound('action');
  return action;
}

/** The action as it is before a write, locked until the transaction ends. */
export async function openForWrite(unit: Unit, id: string, permission: Permission = 'actions.write'): Promise<Stored> {
  const { tx, actor, at } = unit;
  await lockAction(tx, id);
  const action = await requireAction(tx, actor, id, at);
  requirePlant(actor, permission, action.plantId);
  return action;
}

export async function readAction(tx: Tx, actor: Actor, id: string, at: Date): Promise<ActionOf> {
  const action = await requireAction(tx, actor, id, at);
  const [evidence, steps] = [await findEvidence(tx, id), await findSteps(tx, id)];
  const {
    costMinor,
    costCurrency,
    carriedOutBy: _,
    complaintPlant: __,
    containmentPlant: ___,
    casePlant: ____,
    ...shown
  } = action;
  return {
    ...shown,
    ...visibleOrigin(actor, action),
    cost: costMinor === null || costCurrency === null ? null : { amountMinor: costMinor, currency: costCurrency },
    mayVerify: mayVerify(actor, action),
    evidence,
    steps,
  };
}
