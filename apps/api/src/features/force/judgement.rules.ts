import { judgeForces } from '#analysis/force/judge-forces.ts';
import { moments } from '#analysis/force/moments.ts';
import type { ForceDetail, ForceGroup, ForceJudgement } from '#contracts/force.ts';
import type { MeasuredRow } from './forces.queries.ts';

const unsaid = {
  normality: null,
  method: null,
  bound: null,
  needed: null,
  meetsMinimum: null,
  capability: null,
  below: null,
};

/**
 * Samples in order of time, judged together against the minimum of the newest that has one.
 *
 * @param samples at least one
 */
export function judge(samples: readonly MeasuredRow[]): ForceJudgement {
  const forces = samples.flatMap(({ newtons }) => newtons);
  const minimums = samples.flatMap(({ minimumN }) => (minimumN === null ? [] : [minimumN]));
  const minimumN = minimums.at(-1) ?? null;
  const { n: values, mean, deviation } = moments(forces);
  const shared = {
    values,
    samples: samples.length,
    mean,
    deviation,
    smallest: forces.reduce((least, force) => Math.min(least, force)),
    minimumN,
    otherMinimums: [...new Set(minimums)].filter((other) => other !== minimumN).sort((a, b) => a - b),
    belowInSample: minimumN === null ? 0 : forces.filter((force) => force < minimumN).length,
  };
  if (minimumN === null) return { ...shared, ...unsaid, notJudged: 'no_minimum' };
  const said = judgeForces(forces, minimumN);
  if ('reason' in said)
    return { ...shared, ...unsaid, notJudged: said.reason === 'too_few' ? 'too_few' : 'not_finite' };
  const { normality, method, bound, needed, meetsMinimum, below } = said;
  const capability = method === 'order_statistic' ? null : said.capability;
  return { ...shared, notJudged: null, normality, method, bound, needed, meetsMinimum, capability, below };
}

/** Each tool of each plant by itself, the weakest first. */
export const byTool = (samples: readonly MeasuredRow[]): ForceDetail['tools'] =>
  [...Map.groupBy(samples, ({ plantCode, toolId }) => `${plantCode} ${toolId}`).values()]
    .map((own) => ({
      toolId: own[0]!.toolId,
      toolCode: own[0]!.toolCode,
      plantCode: own[0]!.plantCode,
      ...judge(own),
    }))
    .sort((a, b) => a.mean - b.mean);

const ranks = (it: ForceGroup): number =>
  it.meetsMinimum === false || it.weakTools.length > 0
    ? 0
    : it.belowInSample > 0
      ? 1
      : it.meetsMinimum === null
        ? 2
        : 3;

/** Those whose bound, or that of a tool, lies below the minimum first, then those with single values below it, then what cannot be judged. */
export const byNeed = (a: ForceGroup, b: ForceGroup): number =>
  ranks(a) - ranks(b) ||
  (b.below?.value ?? 0) - (a.below?.value ?? 0) ||
  (a.terminalCode < b.terminalCode ? -1 : 1) ||
  (a.kind < b.kind ? -1 : 1);
