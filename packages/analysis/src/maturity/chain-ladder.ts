import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { normalQuantile } from '../numeric/normal-distribution.ts';
import { requireConfidence } from '../numeric/require-count.ts';

export type DevelopmentStep = {
  /** from this age to the next */
  age: number;
  /** cumulated count at the next age over that at this one; null when nothing had been reported at this age */
  factor: number | null;
  /** Mack's σ²; null where no row gives one */
  variance: number | null;
};

export type ProjectedRow = {
  latest: number;
  /** final count; interval log-normal on what is still to come */
  final: Estimate;
  /** Mack's standard error of the final count */
  standardError: number | null;
  /** latest / final, the fraction reported by this age, 0 to 1 */
  maturity: number | null;
};

export type ChainLadder = {
  steps: DevelopmentStep[];
  rows: ProjectedRow[];
  /** still to come over all rows that can be projected, with its standard error */
  toCome: { value: number; standardError: number | null };
};

/**
 * Expected final count of every row of a triangle, with Mack's standard error.
 *
 * f(k) = Σ C(i, k+1) / Σ C(i, k) over the rows that reach k+1; σ²(k) = Σ C(i, k) (C(i, k+1) / C(i, k) - f)² / (rows - 1), and for a last
 * step with one row min(σ⁴(k-1) / σ²(k-2), σ²(k-2), σ²(k-1)); the errors by Mack's formulas. The oldest age seen counts as final: there
 * is no tail beyond it. Young rows rest on few counts and many factors: their intervals are wide and still too short when counts
 * are small.
 * Source: Mack T. (1993) ASTIN Bulletin 23:213-225 (reference `6-chain-ladder-taylor-ashe`).
 *
 * @param cumulative rows of cumulated counts, oldest first, none longer than the one before it
 * @returns `too_few` for a row without a report so far, or that needs a step without a factor
 */
export function chainLadder(cumulative: readonly (readonly number[])[], confidence = defaultConfidence): ChainLadder {
  requireConfidence(confidence);
  if (cumulative.some((row, i) => i > 0 && row.length > cumulative[i - 1]!.length)) {
    throw new RangeError('Rows of a triangle must not become longer.');
  }
  const steps = developmentSteps(cumulative);
  const rowsReaching = (age: number) => cumulative.filter((row) => row.length > age + 1);
  const base = steps.map(({ age }) => rowsReaching(age).reduce((sum, row) => sum + row[age]!, 0));
  const projections = cumulative.map((row) => project(row, steps, base));

  const rows = projections.map(({ latest, final, standardError }): ProjectedRow => {
    if (final === null) return { latest, final: notComputable('too_few'), standardError: null, maturity: null };
    const interval = { ...toComeLimits(final - latest, standardError ?? 0, latest, confidence), confidence };
    return { latest, final: estimate(final, interval), standardError, maturity: latest / final };
  });
  return { steps, rows, toCome: totalToCome(projections, steps, base) };
}

function developmentSteps(cumulative: readonly (readonly number[])[]): DevelopmentStep[] {
  const steps: DevelopmentStep[] = [];
  for (let age = 0; age + 1 < (cumulative[0]?.length ?? 0); age++) {
    const rows = cumulative.filter((row) => row.length > age + 1);
    const from = rows.reduce((sum, row) => sum + row[age]!, 0);
    const factor = from === 0 ? null : rows.reduce((sum, row) => sum + row[age + 1]!, 0) / from;
    const used = rows.filter((row) => row[age]! > 0);
    const squares = used.reduce((sum, row) => sum + row[age]! * (row[age + 1]! / row[age]! - (factor ?? 1)) ** 2, 0);
    const [before, earlier] = [steps.at(-1)?.variance ?? null, steps.at(-2)?.variance ?? null];
    let variance: number | null = null;
    if (used.length > 1) variance = squares / (used.length - 1);
    else if (before !== null && earlier !== null) {
      variance = Math.min(earlier === 0 ? 0 : before ** 2 / earlier, earlier, before);
    }
    steps.push({ age, factor, variance });
  }
  return steps;
}

type Projection = { latest: number; age: number; final: number | null; standardError: number | null };

function project(row: readonly number[], steps: readonly DevelopmentStep[], base: readonly number[]): Projection {
  const age = row.length - 1;
  const latest = row[age] ?? 0;
  const none = { latest, age, final: null, standardError: null };
  if (latest === 0) return none;
  let final = latest;
  let relative: number | null = 0;
  for (const { age: at, factor, variance } of steps.slice(age)) {
    if (factor === null) return none;
    relative =
      relative === null || variance === null ? null : relative + errorOfStep(variance, factor, final, base[at]!);
    final *= factor;
  }
  return { latest, age, final, standardError: relative === null ? null : final * Math.sqrt(relative) };
}

const errorOfStep = (variance: number, factor: number, count: number, base: number): number =>
  (variance / factor ** 2) * (1 / count + 1 / base);

function totalToCome(projections: readonly Projection[], steps: readonly DevelopmentStep[], base: readonly number[]) {
  const known = projections.filter(({ final }) => final !== null);
  const value = known.reduce((sum, { final, latest }) => sum + final! - latest, 0);
  if (known.some(({ standardError }) => standardError === null)) return { value, standardError: null };
  let square = 0;
  known.forEach(({ final, standardError, age }, place) => {
    const shared = steps
      .slice(age)
      .reduce((sum, step) => sum + (2 * step.variance!) / step.factor! ** 2 / base[step.age]!, 0);
    const younger = known.slice(place + 1).reduce((sum, row) => sum + row.final!, 0);
    square += standardError! ** 2 + final! * younger * shared;
  });
  return { value, standardError: Math.sqrt(square) };
}

function toComeLimits(toCome: number, error: number, latest: number, confidence: number) {
  if (!(toCome > 0) || error === 0) return { low: latest + Math.max(0, toCome), high: latest + Math.max(0, toCome) };
  const variance = Math.log(1 + (error / toCome) ** 2);
  const half = -normalQuantile((1 - confidence) / 2) * Math.sqrt(variance);
  const centre = Math.log(toCome) - variance / 2;
  return { low: latest + Math.exp(centre - half), high: latest + Math.exp(centre + half) };
}
