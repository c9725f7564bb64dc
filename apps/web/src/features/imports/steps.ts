import type { Import } from '#contracts/imports.ts';

/** What a person does with a file, in order. */
export const steps = ['columns', 'values', 'check', 'result'] as const;
export type Step = (typeof steps)[number];

const running = ['checking', 'committing'];
export const isRunning = ({ state }: Pick<Import, 'state'>): boolean => running.includes(state);
export const isFinished = ({ state }: Pick<Import, 'state'>): boolean => state === 'committed' || state === 'cancelled';

/** The step that waits for the person. */
export function dueStep(job: Pick<Import, 'state' | 'unknown' | 'outcome'>): Step {
  if (isFinished(job)) return 'result';
  if (job.unknown.length > 0) return 'values';
  return job.outcome || job.state === 'committing' ? 'check' : 'columns';
}

/** Steps that can be opened: those behind, and the one that is due. Nothing changes any more once it is imported. */
export function openSteps(job: Pick<Import, 'state' | 'unknown' | 'outcome'>): Step[] {
  if (isFinished(job)) return ['result'];
  return steps.filter(
    (step) =>
      step === 'columns' || (step === 'values' && job.unknown.length > 0) || (step === 'check' && job.outcome !== null),
  );
}
