/** The causes that evidence can point to; `undetermined` is the absence of evidence, not a cause. */
export const causes = [
  'tooling',
  'handling',
  'partial_seat',
  'misinsertion',
  'probe_damage',
  'wire_dress',
  'adhesive',
  'component',
  'application_limit',
] as const;
export type CauseName = (typeof causes)[number];
export type PerCause = Record<CauseName, number>;

export const perCause = (value: (cause: CauseName) => number): PerCause =>
  Object.fromEntries(causes.map((cause) => [cause, value(cause)])) as PerCause;
