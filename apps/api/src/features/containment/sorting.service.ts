import { createReport } from '#api/features/failures/failures.service.ts';
import { requirePlant } from '#api/platform/actor.ts';
import { newId } from '#api/platform/ids.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Containment, addSorting as contract } from '#contracts/containment.ts';
import type { Place } from '#contracts/containment-parts.ts';
import { NewReport } from '#contracts/failures.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { sql, txExecute } from '#db/sql.ts';
import type { StoredContainment } from './containment.queries.ts';
import { finish, saveContainment } from './finish.ts';
import { openContainment } from './open-containment.service.ts';
import { placeStates } from './places.rules.ts';

type Sorting = Output<NonNullable<typeof contract.body>>;

/** Which stage and source a find at a place counts as. Common practice, no source. */
const foundAt = {
  in_process: { found: 'final_assembly', source: 'line' },
  stock: { found: 'warehouse', source: 'audit' },
  transit: { found: 'warehouse', source: 'audit' },
  customer: { found: 'field', source: 'customer' },
  field: { found: 'field', source: 'field' },
} as const satisfies Record<Place, object>;

const only = <Item>(items: readonly Item[]): Item | null => (items.length === 1 ? items[0]! : null);

/** What sorting found, with what the containment knows of it. */
const reportOf = (containment: StoredContainment, { place, day, inspected, found, note }: Sorting) =>
  NewReport.parse({
    plantId: containment.plantId,
    foundOn: day,
    ...foundAt[place],
    lineId: only(containment.lineIds),
    housingId: only(containment.housingIds),
    terminalId: only(containment.terminalIds),
    toolIds: containment.toolIds.slice(0, 20),
    reelLot: only(containment.reelLots),
    housingLot: only(containment.housingLots),
    quantityFound: found,
    quantityInspected: inspected,
    disposition: 'sorted',
    note: [`${containment.number} ${containment.title}`, ...(note ? [note] : [])].join('\n'),
  });

function requireRoom(containment: StoredContainment, { place, inspected }: Sorting): void {
  const there = placeStates(containment).find((state) => state.place === place);
  if (there?.left === null || there === undefined || inspected <= there.left) return;
  throw problem(
    'not_consistent',
    `Only ${there.left} parts stated there are left to inspect. State how many are there first.`,
    [{ path: 'body/inspected', message: `must be at most ${there.left}` }],
  );
}

export async function addSorting(unit: Unit, id: string, sorting: Sorting): Promise<Containment> {
  await txExecute(unit.tx, sql`select from containment where id = ${id}::uuid for update`);
  const before = await openContainment(unit, id);
  requireRoom(before, sorting);
  const withReport = sorting.report && sorting.found > 0;
  if (withReport) requirePlant(unit.actor, 'failures.write', before.plantId);
  const report = withReport ? await createReport(unit, reportOf(before, sorting)) : null;
  const { place, day, inspected, found, sample, note } = sorting;
  await unit.tx.containmentSorting.create({
    data: {
      id: newId(),
      plantId: before.plantId,
      containmentId: id,
      place,
      day: new Date(day),
      inspected,
      found,
      sample,
      note,
      failureId: report?.id ?? null,
      sortedBy: unit.actor.id,
      sortedAt: unit.at,
    },
  });
  return finish(unit, 'sorting recorded', before, id);
}

export async function withdrawSorting(
  unit: Unit,
  id: string,
  sortingId: string,
  version: number,
  reason: string,
): Promise<Containment> {
  const before = await openContainment(unit, id);
  const sorting = before.sortings.find((row) => row.id === sortingId);
  if (!sorting) throw notFound('sorting result');
  if (sorting.withdrawnAt) throw problem('conflict', 'It was withdrawn already.');
  await saveContainment(unit, id, version, {});
  await unit.tx.containmentSorting.update({
    where: { id: sortingId },
    data: { withdrawnAt: unit.at, withdrawReason: reason },
  });
  return finish(unit, 'sorting withdrawn', before, id);
}
