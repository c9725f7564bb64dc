/** The words of the trail that have a label; others are shown as they are. */
export const entities = [
  'failure',
  'production',
  'import',
  'plant',
  'line',
  'stage',
  'tool',
  'customer',
  'housing',
  'terminal',
  'wire',
  'cost_rate',
  'standard_cost',
  'exchange_rate',
  'organisation',
  'person',
  'token',
  'opinion',
  'case',
  'read_across',
  'action',
  'effect_plan',
  'force_sample',
] as const;

/** `quantityFound` → `quantity found`: a field without a label of its own, still readable. */
export const spaced = (field: string): string =>
  field
    .replace(/([a-z\d])([A-Z])/g, (_, end: string, start: string) => `${end} ${start.toLowerCase()}`)
    .replaceAll('_', ' ');
