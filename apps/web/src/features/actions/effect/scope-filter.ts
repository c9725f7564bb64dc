import type { EffectScope } from '#contracts/effects.ts';
import type { Filter } from '#contracts/shared/filter.ts';

/** The reports that a fix is to prevent, as the filter of the list of reports. Pure. */
export const filterOf = (scope: EffectScope, plantId: string): Partial<Filter> => ({
  plant: [plantId],
  ...(scope.cause && { cause: [scope.cause] }),
  ...(scope.subCause && { subCause: [scope.subCause] }),
  ...(scope.housingId && { housing: [scope.housingId] }),
  ...(scope.terminalId && { terminal: [scope.terminalId] }),
  ...(scope.toolId && { tool: [scope.toolId] }),
  ...(scope.lineId && { line: [scope.lineId] }),
  ...(scope.customerId && { customer: [scope.customerId] }),
  ...(scope.sources.length > 0 && { source: scope.sources }),
});
