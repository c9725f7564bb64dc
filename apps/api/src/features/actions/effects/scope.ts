import type { EffectScope } from '#contracts/effects.ts';
import type { Filter } from '#contracts/shared/filter.ts';

const one = (id: string | null): { list?: string[] } => (id ? { list: [id] } : {});

/** The reports that a fix is to prevent, in the words of the one filter. */
export function filterOf(scope: EffectScope, plantId: string): Filter {
  const filter: Filter = {
    plant: [plantId],
    cause: scope.cause ? [scope.cause] : undefined,
    subCause: one(scope.subCause).list,
    housing: one(scope.housingId).list,
    terminal: one(scope.terminalId).list,
    tool: one(scope.toolId).list,
    line: one(scope.lineId).list,
    customer: one(scope.customerId).list,
    source: scope.sources.length ? scope.sources : undefined,
  };
  return filter;
}

/** Production is reported by plant, line, housing and terminal; a scope that names more is counted against more. */
export const isWiderThanProduction = (scope: EffectScope): boolean =>
  scope.toolId !== null || scope.customerId !== null;

/** Where every failure is found in the plant, none is still to come. */
export const comesLate = ({ sources }: EffectScope): boolean =>
  sources.length === 0 || sources.some((source) => source === 'customer' || source === 'field');
