import { describe, expect, it } from 'vitest';
import { cohensKappa } from '#analysis/agreement/cohens-kappa.ts';
import { entropyBits, informationGain } from '#analysis/information/information-gain.ts';
import { meanInterval } from '#analysis/numeric/mean-interval.ts';
import { brierScore } from '#analysis/scoring/brier-score.ts';
import { calibration } from '#analysis/scoring/calibration.ts';
import { logLoss } from '#analysis/scoring/log-loss.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

describe('agreement', () => {
  type Expected = { kappa: number; se: number; lo95?: number; hi95?: number };
  it.each(['9-kappa-fleiss', '9-kappa-2x2'].map((id) => reference<{ table: number[][] }, Expected>(id)))(
    '$title',
    ({ input, expected }) => {
      const { kappa, standardError } = cohensKappa(input.table);
      expectRelative(kappa.value, expected.kappa);
      expectRelative(standardError, expected.se);
      if (expected.lo95 !== undefined) expectRelative(kappa.interval!.low, expected.lo95);
      if (expected.hi95 !== undefined) expectRelative(kappa.interval!.high, expected.hi95);
    },
  );

  it('cannot be computed without pairs, or when only one class was ever used', () => {
    expect(cohensKappa([[0]]).kappa.reason).toBe('no_reports');
    expect(
      cohensKappa([
        [9, 0],
        [0, 0],
      ]).kappa.reason,
    ).toBe('not_finite');
    expect(
      cohensKappa([
        [9, 0],
        [0, 0],
      ]).observed.value,
    ).toBe(1);
  });
});

describe('scores of stated probabilities', () => {
  const brier = reference<{ y: number[]; p: number[] }, number>('9-brier');
  const cases = brier.input.p.map((p, i) => ({ probabilities: [1 - p, p], outcome: brier.input.y[i]! }));
  it(`${brier.title}: two classes count twice`, () => {
    expectRelative(brierScore(cases).value, 2 * brier.expected);
  });

  type Scores = { logLoss: number; low: number; high: number };
  const added = reference<{ p: number[]; times: number }, Scores>('added-mean-log-loss');
  it.each(added.cases)(added.title, ({ input, expected }) => {
    const { value, interval } = logLoss(
      Array.from({ length: input.times }, () => input.p).flatMap((all) =>
        all.map((p) => ({ probabilities: [p, 1 - p], outcome: 0 })),
      ),
    );
    expectRelative(value, expected.logLoss, 1e-9);
    expectRelative(interval!.low, expected.low, 1e-9);
    expectRelative(interval!.high, expected.high, 1e-9);
  });

  it('cannot be computed for one case, or for what was called impossible', () => {
    expect(logLoss([{ probabilities: [1, 0], outcome: 1 }]).reason).toBe('not_finite');
    expect(meanInterval([3]).reason).toBe('too_few');
    expect(brierScore([]).reason).toBe('no_reports');
  });

  it('calibration compares what was said with what came', () => {
    // 0.62 and 0.68 fall in one bin: said 0.65, came 1/2; 0.95 and 1: said 0.975, came 1
    const { bins, error, reliability } = calibration([
      { said: 0.62, came: true },
      { said: 0.68, came: false },
      { said: 0.95, came: true },
      { said: 1, came: true },
    ]);
    expect(bins.map(({ from, cases: count, came }) => [from, count, came.value])).toEqual([
      [0.6, 2, 0.5],
      [0.9, 2, 1],
    ]);
    expectAbsolute(error, 0.5 * 0.15 + 0.5 * 0.025, 1e-12);
    expectAbsolute(reliability, 0.5 * 0.15 ** 2 + 0.5 * 0.025 ** 2, 1e-12);
    expect(calibration([])).toEqual({ bins: [], error: null, reliability: null });
  });
});

describe('information', () => {
  type Attributes = Record<string, Record<string, [number, number]>>;
  const quinlan = reference<Attributes, Record<string, number>>('9-information-gain');
  it(quinlan.title, () => {
    expectRelative(entropyBits([9, 5]), quinlan.expected.H!);
    for (const [attribute, answers] of Object.entries(quinlan.input)) {
      expectRelative(informationGain(Object.values(answers)), quinlan.expected[attribute]!);
    }
  });

  const lindley = reference<{ prior: number; TPR: number; FPR: number }, { EIG_bits: number }>('9-eig-binary-test');
  it(lindley.title, () => {
    const { prior, TPR, FPR } = lindley.input;
    const joint = [
      [prior * TPR, (1 - prior) * FPR],
      [prior * (1 - TPR), (1 - prior) * (1 - FPR)],
    ];
    expectRelative(informationGain(joint), lindley.expected.EIG_bits);
  });
});
