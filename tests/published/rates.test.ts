import { describe, expect, it } from 'vitest';
import { binomialInterval } from '#analysis/rates/binomial-interval.ts';
import { poissonInterval } from '#analysis/rates/poisson-interval.ts';
import { poissonTest } from '#analysis/rates/poisson-test.ts';
import { type RateRatio, rateRatio } from '#analysis/rates/rate-ratio.ts';
import { dpmoOfSigma, sigmaLevel } from '#analysis/rates/sigma-level.ts';
import { rolledThroughputYield } from '#analysis/rates/yields.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

type Pair = [number, number];

describe('exact Poisson limits', () => {
  for (const id of ['1-garwood-95', '1-garwood-90']) {
    const { title, input, expected } = reference<{ counts: number[]; confidence: number }, Record<string, Pair>>(id);
    it.each(input.counts)(`${title}: count %i`, (count) => {
      const { low, high } = poissonInterval(count, input.confidence);
      expectRelative(low, expected[count]![0]);
      expectRelative(high, expected[count]![1]);
    });
  }

  const bound = reference<{ r: number[]; C: number[] }, Record<string, number[]>>('3-chisq-bound');
  it.each(bound.input.r)(`${bound.title}: one-sided factors for %i failures`, (failures) => {
    bound.input.C.forEach((confidence, column) => {
      const twoSided = 2 * confidence - 1;
      if (twoSided > 0)
        expectRelative(poissonInterval(failures, twoSided).high, bound.expected[`r=${failures}`]![column]!);
    });
  });

  const factor = reference<number, number>('chi2-exposure-factor');
  it.each(factor.cases)(`${factor.title}: $input events`, ({ input, expected }) => {
    expectRelative(poissonInterval(input, 0.9).high, expected);
  });
});

describe('exact binomial limits', () => {
  type Input = { x: number; n: number; confidence: number };
  for (const id of ['1-binom-81-263', '1-binom-15-148', '1-binom-0-20']) {
    const { title, input, expected } = reference<Input, { clopper_pearson: Pair }>(id);
    it(title, () => {
      const { low, high } = binomialInterval(input.x, input.n, input.confidence);
      expectRelative(low, expected.clopper_pearson[0]);
      expectRelative(high, expected.clopper_pearson[1]);
    });
  }

  const nist = reference<{ x: number; n: number; confidence_two_sided: number }, Pair>('1-nist-binom-4-20');
  it(nist.title, () => {
    const { low, high } = binomialInterval(nist.input.x, nist.input.n, nist.input.confidence_two_sided);
    expectAbsolute(low, nist.expected[0], 1e-6);
    expectAbsolute(high, nist.expected[1], 1e-6);
  });

  const three = reference<{ n: number[] }, { exact: number[] }>('3-rule-of-three');
  it.each(three.input.n.map((trials, index) => ({ trials, exact: three.expected.exact[index]! })))(
    `${three.title}: no event in $trials`,
    ({ trials, exact }) => expectRelative(binomialInterval(0, trials, 0.9).high, exact),
  );
});

describe('DPMO and sigma level', () => {
  type Expected = { one_tail: number[]; two_tail: number[]; sigma_of_dpmo: Record<string, number> };
  const { title, input, expected } = reference<{ sigma: number[] }, Expected>('1-dpmo-sigma');
  it.each(input.sigma.map((sigma, index) => ({ sigma, index })))(`${title}: sigma $sigma`, ({ sigma, index }) => {
    expectRelative(dpmoOfSigma(sigma), expected.one_tail[index]!);
    expectRelative(dpmoOfSigma(sigma, 'two_tails_shift_1_5'), expected.two_tail[index]!);
  });
  it.each(Object.entries(expected.sigma_of_dpmo))(`${title}: sigma of %s DPMO`, (dpmo, sigma) => {
    expectRelative(sigmaLevel(Number(dpmo)).value, sigma);
  });
});

describe('one Poisson rate against a given one', () => {
  type Expected = { p_two_sided: number; rate: number; ci95: Pair };
  const { title, input, expected } = reference<{ x: number; T: number }, Expected>('2-poisson-test-r1');
  it(title, () => {
    const { rate, p } = poissonTest({ count: input.x, exposure: input.T, rate: 1 });
    expectRelative(p!.twoSided, expected.p_two_sided);
    expectRelative(rate.value, expected.rate);
    expectRelative(rate.interval!.low, expected.ci95[0]);
    expectRelative(rate.interval!.high, expected.ci95[1]);
  });
});

describe('two Poisson rates', () => {
  const r2 = reference<{ x: Pair; T: Pair }, { p_two_sided: number; ratio: number; ci95: Pair }>('2-poisson-test-r2');
  it(r2.title, () => {
    const [x, T] = [r2.input.x, r2.input.T];
    const result = rateRatio({ failures: x[0], exposure: T[0] }, { failures: x[1], exposure: T[1] });
    expectRelative(result.p!.twoSided, r2.expected.p_two_sided);
    expectRelative(result.value, r2.expected.ratio);
    expectRelative(result.interval!.low, r2.expected.ci95[0]);
    expectRelative(result.interval!.high, r2.expected.ci95[1]);
  });

  type Case = { x1: number; t1: number; x2: number; t2: number; sides: 'two' | 'less' };
  type Expected = { ratio?: number; p: number; ci?: Pair; ratioUpper95?: number };
  const fay = reference<Case, Expected>('poisson-rate-ratio');
  it.each(fay.cases)(`${fay.title}: $input.x1 / $input.t1 against $input.x2 / $input.t2`, ({ input, expected }) => {
    const compare = (confidence: number): RateRatio =>
      rateRatio({ failures: input.x1, exposure: input.t1 }, { failures: input.x2, exposure: input.t2 }, confidence);
    expectRelative(compare(0.95).p![input.sides === 'two' ? 'twoSided' : 'less'], expected.p);
    if (expected.ratio !== undefined) expectRelative(compare(0.95).value, expected.ratio);
    if (expected.ci !== undefined) {
      expectRelative(compare(0.95).interval!.low, expected.ci[0]);
      expectRelative(compare(0.95).interval!.high, expected.ci[1]);
    }
    if (expected.ratioUpper95 !== undefined) expectRelative(compare(0.9).interval!.high, expected.ratioUpper95);
  });

  type Zero = { x_before: number; T_before: number; x_after: number; T_after: number };
  const zero = reference<Zero, { p_one_sided: number }>('2-zero-after-closed-form');
  it(zero.title, () => {
    const after = { failures: zero.input.x_after, exposure: zero.input.T_after };
    const before = { failures: zero.input.x_before, exposure: zero.input.T_before };
    const result = rateRatio(after, before);
    expectRelative(result.p!.less, zero.expected.p_one_sided);
    expect(result.value).toBe(0);
  });

  const large = reference<Case, number>('added-rate-ratio-large-counts');
  it.each(large.cases)(`${large.title}: $input.x1 / $input.t1 against $input.x2 / $input.t2`, ({ input, expected }) => {
    const result = rateRatio({ failures: input.x1, exposure: input.t1 }, { failures: input.x2, exposure: input.t2 });
    expectRelative(result.p!.twoSided, expected);
  });
});

describe('rolled throughput yield', () => {
  const { title, cases } = reference<Pair[], { low: number; high: number }>('added-rolled-yield-interval');
  it.each(cases)(`${title}: $input`, ({ input, expected }) => {
    const steps = input.map(([passed, failed]) => ({ units: passed + failed, notRightFirstTime: failed }));
    const { interval } = rolledThroughputYield(steps, { seed: 1, draws: 100_000 });
    expectAbsolute(interval!.low, expected.low, 0.002);
    expectAbsolute(interval!.high, expected.high, 0.002);
  });
});
