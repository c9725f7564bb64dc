/** The bars of a Pareto before they are ranked: what was counted under each key, now and before. */
import type { WeightedSum } from '#analysis/rates/weighted-poisson-interval.ts';
import type { Measure } from '#contracts/analyses.ts';
import type { Dimension } from '#contracts/shared/dimension.ts';
import { stageOf } from '#contracts/taxonomy.ts';
import { type Exposure, isExposureDimension } from './exposure.queries.ts';
import type { Converter } from './money.rules.ts';
import type { KeyExposure, KeySums } from './pareto.queries.ts';
import { reportWeights, terminalWeights } from './sums.ts';

export interface Group {
  key: string;
  now: KeySums[];
  before: KeySums[];
  /** null where production is not reported for this key */
  exposure: Exposure | null;
  exposureBefore: Exposure | null;
}

export interface Counted {
  now: KeySums[];
  before: KeySums[];
  exposure: KeyExposure[];
  exposureBefore: KeyExposure[];
}

/** The word that selects a key in the filter; free text `none` and an empty field are one bar, as they are in the filter. */
const wordOf = (key: string | number | null) => (typeof key === 'number' ? stageOf(key) : (key ?? 'none'));

export const addExposures = (rows: readonly Exposure[]): Exposure => ({
  units: rows.reduce((sum, row) => sum + row.units, 0),
  terminals: rows.reduce((sum, row) => sum + row.terminals, 0),
});

export function groupByKey(counted: Counted, dimension: Dimension): Group[] {
  const own = isExposureDimension(dimension);
  const exposureOf = (rows: readonly KeyExposure[]) => {
    const all = addExposures(rows);
    const byWord = new Map(rows.map((row) => [wordOf(row.key), row]));
    return (word: string) => (own ? (word === 'none' ? null : (byWord.get(word) ?? null)) : all);
  };
  const exposure = exposureOf(counted.exposure);
  const exposureBefore = exposureOf(counted.exposureBefore);
  const groups = new Map<string, Group>();
  const groupOf = (key: string | number | null): Group => {
    const word = wordOf(key);
    const known = groups.get(word);
    if (known) return known;
    const group = { key: word, now: [], before: [], exposure: exposure(word), exposureBefore: exposureBefore(word) };
    groups.set(word, group);
    return group;
  };
  for (const row of counted.now) groupOf(row.key).now.push(row);
  for (const row of counted.before) groupOf(row.key).before.push(row);
  return [...groups.values()];
}

/** The measured amount of a group's reports, money in the currency of the answer. A rate weighs failed terminals. */
export function weightsOf(rows: readonly KeySums[], measure: Measure, money: Converter): WeightedSum {
  if (measure === 'reports') return reportWeights(rows);
  if (measure === 'terminals' || measure === 'rate') return terminalWeights(rows);
  const total = { sum: 0, sumOfSquares: 0, largest: 0 };
  for (const row of rows) {
    const factor = money.factor(row.plant_id);
    total.sum += factor * (row.booked + (measure === 'withEstimates' ? row.estimate : 0));
    total.sumOfSquares += factor ** 2 * (row.money_squared ?? 0);
    total.largest = Math.max(total.largest, factor * (row.money_largest ?? 0));
  }
  return total;
}
