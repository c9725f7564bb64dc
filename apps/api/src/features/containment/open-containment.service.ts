import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Containment } from '#contracts/containment.ts';
import type { Tx } from '#db/client.ts';
import { txOne } from '#db/sql.ts';
import { containmentSql, StoredContainment } from './containment.queries.ts';
import { placeStates } from './places.rules.ts';
import { builtIn, reportsIn } from './population.queries.ts';

export async function presentContainment(tx: Tx, stored: StoredContainment): Promise<Containment> {
  const { stated: _, ...same } = stored;
  const [built, found] = [await builtIn(tx, stored), await reportsIn(tx, stored)];
  const places = placeStates(stored);
  const known = built.reported > 0;
  const suspect = stored.suspectQuantity ?? (known ? built.units : null);
  const accounted = places.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
  return {
    ...same,
    places,
    population: {
      units: known ? built.units : null,
      terminals: known ? built.terminals : null,
      narrower: [stored.toolIds, stored.reelLots, stored.housingLots].some(({ length }) => length > 0),
      suspect,
      stated: accounted,
      unaccounted: suspect === null ? null : Math.max(0, suspect - accounted),
      reports: found.reports,
      reportedTerminals: found.terminals,
    },
  };
}

export async function findContainment(tx: Tx, actor: Actor, id: string): Promise<StoredContainment> {
  const stored = await txOne(tx, containmentSql(id), StoredContainment);
  if (!stored || !holds(actor, 'containment.read', stored.plantId)) throw notFound('containment');
  return stored;
}

export const readContainment = async (tx: Tx, actor: Actor, id: string): Promise<Containment> =>
  presentContainment(tx, await findContainment(tx, actor, id));

export async function writableContainment({ tx, actor }: Unit, id: string): Promise<StoredContainment> {
  const stored = await findContainment(tx, actor, id);
  requirePlant(actor, 'containment.write', stored.plantId);
  return stored;
}

export async function openContainment(unit: Unit, id: string): Promise<StoredContainment> {
  const stored = await writableContainment(unit, id);
  if (stored.closedAt)
    throw problem('conflict', 'The containment is closed. Open it again, with the reason, to change it.');
  return stored;
}
