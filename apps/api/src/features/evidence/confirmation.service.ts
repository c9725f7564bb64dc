import type { z } from 'zod';
import type { CauseName } from '#analysis/suggestion/causes.ts';
import { probabilities, suggest } from '#analysis/suggestion/suggest.ts';
import { openReport } from '#api/features/failures/open-report.service.ts';
import { applySorting } from '#api/features/failures/sorting.service.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Decision } from '#contracts/evidence.ts';
import type { Report } from '#contracts/failures.ts';
import { causeTaxonomy } from '#contracts/taxonomy.ts';
import { txExecute } from '#db/sql.ts';
import { type Considered, consider } from './evidence.service.ts';
import { learnCase, lockReport } from './learning.repository.ts';
import { fromPerCause } from './model.service.ts';
import { withdrawConfirmation } from './withdraw.service.ts';

export type DecisionInput = z.output<typeof Decision>;

function check(decision: DecisionInput, suggested: CauseName, taken: number): void {
  if (decision.subCause && !causeTaxonomy[decision.cause].subCauses.includes(decision.subCause))
    throw problem('not_consistent', 'Choose a sub-cause that belongs to the cause.', [
      { path: 'body/subCause', message: 'must be a sub-cause of the cause' },
    ]);
  if (taken > 0 && decision.cause !== suggested && decision.cause !== 'undetermined' && !decision.reason)
    throw problem('not_consistent', 'The findings point to another cause. Say why you decide otherwise.', [
      { path: 'body/reason', message: 'is needed to decide against the suggestion' },
    ]);
}

/** Decides the cause of one report, keeps what the suggestion said without this case, and learns from it. */
export async function confirmCause(unit: Unit, id: string, version: number, decision: DecisionInput): Promise<Report> {
  await lockReport(unit.tx, id);
  const report = await openReport(unit, 'failures.sort', id);
  await withdrawConfirmation(unit, report);
  return keepDecision(unit, report, version, decision, await consider(unit.tx, report));
}

export async function keepDecision(
  unit: Unit,
  report: Report,
  version: number,
  decision: DecisionInput,
  { findings, answers, model }: Considered,
): Promise<Report> {
  const { tx, at, actor } = unit;
  const { causes: opinions } = suggest(model, answers);
  const suggested = opinions[0]!.cause;
  const taken = findings.filter(({ source }) => source !== 'computed').length;
  check(decision, suggested, taken);
  await tx.confirmation.create({
    data: {
      id: newId(),
      plantId: report.plantId,
      failureId: report.id,
      housingId: report.housingId,
      at,
      personId: actor.kind === 'person' ? actor.id : null,
      actor: actor.name,
      cause: decision.cause,
      suggested,
      frequent: model.frequent,
      reason: decision.reason,
      answers: Object.fromEntries(answers),
      taken,
      probabilities: fromPerCause(probabilities(model, answers)),
      base: fromPerCause(model.base),
      temperature: model.temperature,
      modelVersion: model.version,
    },
  });
  if (decision.cause !== 'undetermined')
    await learnCase(
      (statement) => txExecute(tx, statement),
      report.plantId,
      decision.cause,
      Object.fromEntries(answers),
      1,
    );
  return applySorting(unit, report, version, 'confirmed', decision);
}
