/** The reports behind each count of a gate. Pure. */
import type { Gates } from '#contracts/gates.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { type Stage, stageNumber, stages } from '#contracts/taxonomy.ts';

type Head = Pick<Gates, 'period' | 'maturity'>;

const upTo = (gate: Stage): Stage[] => stages.slice(0, stageNumber(gate));
const after = (gate: Stage): Stage[] => stages.slice(stageNumber(gate));

export const linksOf = (gate: Stage, filter: Partial<Filter>, { period, maturity }: Head) => {
  const { from, to, ...rest } = filter;
  const origin = upTo(gate);
  return {
    foundHere: { ...rest, ...period, origin, found: [gate] },
    foundLater: { ...rest, ...period, origin, found: after(gate) },
    fieldBuilt: {
      ...rest,
      to: maturity.until,
      origin,
      found: ['field' as const],
      built: true,
      builtFrom: period.from,
      builtTo: period.to,
    },
  } satisfies Record<string, Partial<Filter>>;
};

/** `gate:minor` of the address with one gate's cost replaced or taken out; undefined when none is left. */
export function withPointCost(given: readonly string[], gate: Stage, minor: number | undefined): string[] | undefined {
  const others = given.filter((text) => !text.startsWith(`${gate}:`));
  const next = minor === undefined || minor <= 0 ? others : [...others, `${gate}:${minor}`];
  return next.length > 0 ? next : undefined;
}
