import { z } from 'zod';
import { prepare } from '#api/features/analyses/asked.service.ts';
import { queryOf } from '#api/features/week/links.ts';
import { type Actor, choosePlants, holds, type PlantScope, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile, notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { AnalysisFilter } from '#contracts/shared/filter.ts';
import { Id } from '#contracts/shared/scalars.ts';
import type { WhatIf, WhatIfInput, WhatIfResult, WhatIfSummary, WhatIfWrite } from '#contracts/what-if.ts';
import type { Database } from '#db/client.ts';
import { whatIfOf } from './compute.service.ts';
import { filterOf } from './input.rules.ts';
import { findWhatIf, findWhatIfs } from './what-if.repository.ts';

interface ListQuery {
  plant?: string[] | undefined;
  retired: boolean;
  cursor?: string | undefined;
  limit: number;
}

export const computeWhatIf = async (
  db: Database,
  actor: Actor,
  asked: { query: AnalysisFilter; input: WhatIfInput; at: Date },
): Promise<WhatIfResult> => whatIfOf(await prepare(db, actor, asked.query, asked.at), asked.at, asked.input);

export async function listWhatIfs(db: Database, actor: Actor, { plant, retired, cursor, limit }: ListQuery) {
  const scope = choosePlants(actor, 'analyses.read', plant);
  const [after] = decodeCursor(cursor, z.tuple([Id])) ?? [];
  return toPage(await findWhatIfs(db, scope, { retired, after, limit: limit + 1 }), limit, ({ id }) => [id]);
}

/** The kept scenario of each plant whose best set is worth most; for pages that look at many things, such as a review. */
export async function bestWhatIfs(db: Database, scope: PlantScope): Promise<WhatIfSummary[]> {
  const live = await findWhatIfs(db, scope, { retired: false, limit: 200 });
  const worth = ({ best }: WhatIfSummary) => best?.worthMinor ?? 0;
  return [...Map.groupBy(live, ({ plantId }) => plantId).values()].flatMap((own) => {
    const [first] = own.filter(({ best }) => best !== null).sort((a, b) => worth(b) - worth(a));
    return first ? [first] : [];
  });
}

export async function readWhatIf(db: Database, actor: Actor, id: string): Promise<WhatIf> {
  const found = await findWhatIf(db.prisma, id);
  if (!found || !holds(actor, 'analyses.read', found.plantId)) throw notFound('scenario');
  return found;
}

/** Computes and pins what was asked: the period that the words stood for, and the one plant. */
async function computed(db: Database, { actor, at }: Unit, { query, input }: WhatIfWrite) {
  const { filter, plantId } = filterOf(query);
  requirePlant(actor, 'whatIf.write', plantId);
  const asked = await prepare(db, actor, filter, at);
  const result = await whatIfOf(asked, at, input, 'input/');
  const currency = new URLSearchParams({ currency: result.currency }).toString();
  return { plantId, query: `${queryOf(asked.filter)}&${currency}`, input, result, computedAt: at };
}

const audited = ({ name, note, query, input, together, retiredAt }: WhatIf) => ({
  name,
  note,
  query,
  input,
  together,
  retiredAt,
});

async function record(unit: Unit, action: string, before: WhatIf | null, after: WhatIf): Promise<WhatIf> {
  await recordChange(unit, {
    action,
    entity: 'what_if',
    entityId: after.id,
    label: after.name,
    plantId: after.plantId,
    before: before && audited(before),
    after: audited(after),
  });
  return after;
}

export async function createWhatIf(db: Database, unit: Unit, body: WhatIfWrite): Promise<WhatIf> {
  const id = newId();
  await unit.tx.whatIf.create({
    data: {
      id,
      ...(await computed(db, unit, body)),
      name: body.name,
      note: body.note,
      createdBy: unit.actor.name,
      createdAt: unit.at,
    },
  });
  return record(unit, 'created', null, (await findWhatIf(unit.tx, id))!);
}

async function changeable(unit: Unit, id: string): Promise<WhatIf> {
  const before = await findWhatIf(unit.tx, id);
  if (!before || !holds(unit.actor, 'analyses.read', before.plantId)) throw notFound('scenario');
  requirePlant(unit.actor, 'whatIf.write', before.plantId);
  return before;
}

export async function updateWhatIf(
  db: Database,
  unit: Unit,
  target: { id: string; version: number },
  body: WhatIfWrite,
): Promise<WhatIf> {
  const { id, version } = target;
  const before = await changeable(unit, id);
  const { plantId, ...data } = await computed(db, unit, body);
  if (plantId !== before.plantId)
    throw problem('not_consistent', 'A scenario stays with its plant. Keep a new one for the other plant.', [
      { path: 'body/query', message: 'names another plant' },
    ]);
  const { count } = await unit.tx.whatIf.updateMany({
    where: { id, version },
    data: { ...data, name: body.name, note: body.note, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  return record(unit, 'changed', before, (await findWhatIf(unit.tx, id))!);
}

export async function retireWhatIf(
  unit: Unit,
  { id, version }: { id: string; version: number },
  retired: boolean,
): Promise<WhatIf> {
  const before = await changeable(unit, id);
  const { count } = await unit.tx.whatIf.updateMany({
    where: { id, version },
    data: { retiredAt: retired ? unit.at : null, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  return record(unit, retired ? 'retired' : 'restored', before, (await findWhatIf(unit.tx, id))!);
}
