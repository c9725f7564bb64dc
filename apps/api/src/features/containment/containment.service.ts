import { requirePlant } from '#api/platform/actor.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type {
  Containment,
  ContainmentInput,
  setCleanPoint as cleanContract,
  statePlaces as placesContract,
} from '#contracts/containment.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { tellPlants } from './alerting.service.ts';
import { finish, saveContainment } from './finish.ts';
import { containmentNumber, takeNumber } from './numbering.ts';
import { openContainment, writableContainment } from './open-containment.service.ts';
import { checkReferences } from './references.queries.ts';

const toColumns = ({ builtFrom, builtTo, ...same }: ContainmentInput) => ({
  ...same,
  builtFrom: new Date(builtFrom),
  builtTo: new Date(builtTo),
});

function ownerOf({ actor }: Unit, ownerId: string | null): string {
  if (ownerId) return ownerId;
  if (actor.kind === 'person') return actor.id;
  throw problem('not_consistent', 'Name the person who answers for the containment.', [
    { path: 'body/ownerId', message: 'is needed where a machine records it' },
  ]);
}

export async function createContainment(unit: Unit, input: ContainmentInput): Promise<Containment> {
  requirePlant(unit.actor, 'containment.write', input.plantId);
  const it = { ...input, ownerId: ownerOf(unit, input.ownerId) };
  const facts = await checkReferences(unit.tx, it, unit.at);
  const id = newId();
  const number = containmentNumber(facts.plantCode, facts.year, await takeNumber(unit.tx, it.plantId, facts.year));
  await unit.tx.containment.create({
    data: { ...toColumns(it), id, number, ownerId: it.ownerId, createdAt: unit.at, createdBy: unit.actor.id },
  });
  await tellPlants(unit, id);
  return finish(unit, 'opened', null, id);
}

export async function updateContainment(
  unit: Unit,
  id: string,
  version: number,
  input: ContainmentInput,
): Promise<Containment> {
  const before = await openContainment(unit, id);
  if (input.plantId !== before.plantId)
    throw problem('not_consistent', 'A containment stays with its plant. Close it and open one at the right plant.', [
      { path: 'body/plantId', message: 'must stay the same' },
    ]);
  const it = { ...input, ownerId: input.ownerId ?? before.ownerId };
  await checkReferences(unit.tx, it, unit.at);
  await saveContainment(unit, id, version, { ...toColumns(it), ownerId: it.ownerId });
  await tellPlants(unit, id);
  return finish(unit, 'changed', before, id);
}

export async function statePlaces(
  unit: Unit,
  id: string,
  version: number,
  { places }: Output<NonNullable<typeof placesContract.body>>,
): Promise<Containment> {
  const before = await openContainment(unit, id);
  await saveContainment(unit, id, version, {});
  for (const { place, quantity, note } of places) {
    const inspected = before.sortings
      .filter((row) => row.place === place && row.withdrawnAt === null)
      .reduce((sum, row) => sum + row.inspected, 0);
    if (quantity !== null && quantity < inspected)
      throw problem('not_consistent', `${inspected} parts were inspected there already. State at least as many.`, [
        { path: 'body/places', message: `${place} must not be below ${inspected}` },
      ]);
    await unit.tx.containmentPlace.deleteMany({ where: { containmentId: id, place } });
    if (quantity !== null)
      await unit.tx.containmentPlace.create({
        data: {
          containmentId: id,
          plantId: before.plantId,
          place,
          quantity,
          note,
          statedAt: unit.at,
          statedBy: unit.actor.id,
        },
      });
  }
  return finish(unit, 'places stated', before, id);
}

export async function setCleanPoint(
  unit: Unit,
  id: string,
  version: number,
  { from, serial, lot, reason }: Output<NonNullable<typeof cleanContract.body>>,
): Promise<Containment> {
  const before = await openContainment(unit, id);
  await saveContainment(unit, id, version, {
    cleanFrom: from === null ? null : new Date(from),
    cleanSerial: serial,
    cleanLot: lot,
    cleanReason: reason,
    cleanBy: unit.actor.id,
    cleanAt: unit.at,
  });
  return finish(unit, 'clean point set', before, id);
}

export async function closeContainment(unit: Unit, id: string, version: number, note: string): Promise<Containment> {
  const before = await openContainment(unit, id);
  if (before.cleanAt === null)
    throw problem('conflict', 'Set the clean point first: from which day, serial or lot on parts are good.');
  await saveContainment(unit, id, version, { closedAt: unit.at, closedBy: unit.actor.id, closingNote: note });
  return finish(unit, 'closed', before, id);
}

export async function reopenContainment(unit: Unit, id: string, version: number, reason: string): Promise<Containment> {
  const before = await writableContainment(unit, id);
  if (!before.closedAt) throw problem('conflict', 'It is open.');
  await saveContainment(unit, id, version, { closedAt: null, closedBy: null, closingNote: null });
  return finish(unit, `opened again: ${reason}`, before, id);
}
