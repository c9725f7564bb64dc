import type { Containment } from '#contracts/containment.ts';
import type { Filter } from '#contracts/shared/filter.ts';

type Scope = Pick<
  Containment,
  | 'plantId'
  | 'housingIds'
  | 'terminalIds'
  | 'lineIds'
  | 'toolIds'
  | 'reelLots'
  | 'housingLots'
  | 'builtFrom'
  | 'builtTo'
>;

/** The reports in the scope, by the shared filter: the same ones that the population counts. */
export const scopeFilter = (scope: Scope): Partial<Filter> => ({
  plant: [scope.plantId],
  ...(scope.housingIds.length > 0 && { housing: scope.housingIds }),
  ...(scope.terminalIds.length > 0 && { terminal: scope.terminalIds }),
  ...(scope.lineIds.length > 0 && { line: scope.lineIds }),
  ...(scope.toolIds.length > 0 && { tool: scope.toolIds }),
  ...(scope.reelLots.length > 0 && { lot: scope.reelLots }),
  ...(scope.housingLots.length > 0 && { housingLot: scope.housingLots }),
  builtFrom: scope.builtFrom,
  builtTo: scope.builtTo,
});
