import type { z } from 'zod';
import { withdrawConfirmation } from '#api/features/evidence/withdraw.service.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Report, Sorting } from '#contracts/failures.ts';
import { type Stage, stageNumber } from '#contracts/taxonomy.ts';
import { finish } from './finish.ts';
import { openReport } from './open-report.service.ts';
import { saveReport } from './reports.repository.ts';

type SortingInput = z.output<typeof Sorting>;

export function requireOrder(origin: Stage | null, found: Stage, path: string): void {
  if (origin && stageNumber(origin) > stageNumber(found))
    throw problem(
      'not_consistent',
      'A fault cannot be made after it was found. Choose an earlier origin, or correct the stage that found it.',
      [{ path: `body/${path}`, message: 'must not put the origin after the stage that found it' }],
    );
}

/** The report's columns that say its cause. */
export const sortingColumns = ({ actor, at }: Unit, sorting: SortingInput) => ({
  cause: sorting.cause,
  subCause: sorting.subCause,
  origin: sorting.origin && stageNumber(sorting.origin),
  proof: sorting.proof,
  sortedAt: at,
  sortedBy: actor.id,
});

/** Keeps this change of the cause for good. */
export async function keepChange(unit: Unit, { id, plantId }: Pick<Report, 'id' | 'plantId'>, sorting: SortingInput) {
  await unit.tx.causeChange.create({
    data: {
      id: newId(),
      plantId,
      failureId: id,
      at: unit.at,
      personId: unit.actor.kind === 'person' ? unit.actor.id : null,
      actor: unit.actor.name,
      cause: sorting.cause,
      subCause: sorting.subCause,
      origin: sorting.origin && stageNumber(sorting.origin),
      proof: sorting.proof,
      reason: sorting.reason,
    },
  });
}

/** Gives an open report its cause and ends the write. */
export async function applySorting(
  unit: Unit,
  before: Report,
  version: number,
  action: string,
  sorting: SortingInput,
): Promise<Report> {
  requireOrder(sorting.origin, before.found, 'origin');
  await saveReport(unit.tx, before, version, sortingColumns(unit, sorting));
  await keepChange(unit, before, sorting);
  return finish(unit, action, before, before);
}

/** Sorts without the evidence; a confirmation of the report no longer holds then. */
export async function sortReport(unit: Unit, id: string, version: number, sorting: SortingInput): Promise<Report> {
  const before = await openReport(unit, 'failures.sort', id);
  await withdrawConfirmation(unit, before);
  return applySorting(unit, before, version, 'sorted', sorting);
}
