import { holds, requireGroup, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile, problem, unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Fields, Kind, Row } from './kind.ts';
import { find, noSuch } from './read.service.ts';
import { sameAs, toData } from './stored.ts';

/** What belongs to the group, plants among it, takes the role for all plants; anything else the role at its plant. */
export async function requireNew({ tx, actor }: Unit, { contract }: Kind, input: Fields): Promise<void> {
  if (contract.write === 'groupData.write') return requireGroup(actor, contract.write);
  const plantId = input.plantId as string;
  requirePlant(actor, contract.write, plantId);
  if ((await tx.plant.count({ where: { id: plantId, retiredAt: null } })) === 0)
    throw unknownReference('plantId', 'plant');
}

async function requireOld({ tx, actor }: Unit, kind: Kind, id: string): Promise<Row> {
  const { write } = kind.contract;
  if (write === 'groupData.write') requireGroup(actor, write);
  const row = await find(tx, kind, id);
  const plantId = kind.plantOf(row as unknown as Fields);
  if (plantId === null || write === 'groupData.write') return row;
  if (!holds(actor, 'masterData.read', plantId)) throw noSuch(kind);
  requirePlant(actor, write, plantId);
  return row;
}

async function record(unit: Unit, kind: Kind, action: string, before: Row | null, after: Row): Promise<void> {
  await recordChange(unit, {
    action,
    entity: kind.contract.entity,
    entityId: after.id,
    label: kind.label(after),
    plantId: kind.plantOf(after as unknown as Fields),
    before,
    after,
  });
}

export async function create(unit: Unit, kind: Kind, input: Fields): Promise<Row> {
  await requireNew(unit, kind, input);
  await kind.check(unit, input, null);
  const id = newId();
  await kind.table(unit.tx).create({ data: { id, ...toData(kind, input) } });
  await kind.saved(unit, { before: null, after: { id, version: 1, retiredAt: null, ...input }, input });
  const after = await find(unit.tx, kind, id);
  await record(unit, kind, 'created', null, after);
  return after;
}

async function change(
  unit: Unit,
  kind: Kind,
  { before, version, data }: { before: Row; version: number; data: Fields },
): Promise<void> {
  const { count } = await kind.table(unit.tx).updateMany({
    where: { id: before.id, version },
    data: { ...data, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
}

export async function update(unit: Unit, kind: Kind, id: string, version: number, input: Fields): Promise<Row> {
  const before = await requireOld(unit, kind, id);
  if (before.version !== version) throw changedMeanwhile();
  if (kind.plantOf({ ...before, ...input, id }) !== kind.plantOf(before as unknown as Fields))
    throw problem('not_consistent', 'It stays with its plant. Retire it here and add it at the other plant.', [
      { path: 'body/plantId', message: 'cannot change' },
    ]);
  if (sameAs(before, input)) return before;
  await kind.check(unit, input, before);
  await change(unit, kind, { before, version, data: toData(kind, input) });
  await kind.saved(unit, { before, after: { ...before, ...input, version: version + 1 }, input });
  const after = await find(unit.tx, kind, id);
  await record(unit, kind, 'updated', before, after);
  return after;
}

export async function retire(unit: Unit, kind: Kind, id: string, version: number, retired: boolean): Promise<Row> {
  const before = await requireOld(unit, kind, id);
  if (before.version !== version) throw changedMeanwhile();
  if ((before.retiredAt !== null) === retired) return before;
  await change(unit, kind, { before, version, data: { retiredAt: retired ? unit.at : null } });
  const after = await find(unit.tx, kind, id);
  await kind.saved(unit, { before, after, input: null });
  await record(unit, kind, retired ? 'retired' : 'brought back', before, after);
  return after;
}
