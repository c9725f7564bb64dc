import { describe, expect, it } from 'vitest';
import { chainLadder } from '#analysis/maturity/chain-ladder.ts';
import { maturityByAge } from '#analysis/maturity/maturity-by-age.ts';
import { predictCount } from '#analysis/maturity/predict-count.ts';
import { type WeibullLife, weibullLife, weibullMoments } from '#analysis/maturity/weibull.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

describe('chain ladder with standard errors', () => {
  type Expected = {
    f: number[];
    sigma2: number[];
    ultimate: number[];
    total_reserve: number;
    mack_se: number[];
    total_se: number;
  };
  const mack = reference<{ incremental_triangle: number[][] }, Expected>('6-chain-ladder-taylor-ashe');
  const cumulative = mack.input.incremental_triangle.map((row) => {
    let sum = 0;
    return row.map((value) => {
      sum += value;
      return sum;
    });
  });
  const result = chainLadder(cumulative);

  it(`${mack.title}: factors and variances`, () => {
    result.steps.forEach(({ factor, variance }, place) => {
      expectRelative(factor, mack.expected.f[place]!, 1e-9);
      expectRelative(variance, mack.expected.sigma2[place]!);
    });
  });

  it(`${mack.title}: final counts and errors`, () => {
    result.rows.forEach(({ final, standardError, latest, maturity }, place) => {
      expectRelative(final.value, mack.expected.ultimate[place]!);
      expectRelative(standardError, mack.expected.mack_se[place]!);
      expectRelative(maturity, latest / mack.expected.ultimate[place]!);
      expect(final.interval!.low).toBeGreaterThanOrEqual(latest);
    });
    expectRelative(result.toCome.value, mack.expected.total_reserve);
    expectRelative(result.toCome.standardError, mack.expected.total_se);
  });

  it(`${mack.title}: the maturity of each age is that of the row of this age`, () => {
    const fractions = maturityByAge(result.steps);
    result.rows.forEach(({ maturity }, place) => {
      expectRelative(fractions[9 - place]!, maturity!, 1e-12);
    });
  });
});

describe('Weibull life, right censored', () => {
  type Expected = {
    shape: number;
    eta: number;
    loglik: number;
    se_mu: number;
    se_log_scale: number;
    se_shape: number;
    se_eta: number;
  };
  const check = (life: WeibullLife, expected: Expected): void => {
    expectRelative(life.shape.value, expected.shape, 1e-5);
    expectRelative(life.characteristicLife.value, expected.eta, 1e-5);
    expectRelative(life.logLikelihood, expected.loglik, 1e-5);
    expectRelative(Math.sqrt(life.covariance.mu), expected.se_mu, 1e-5);
    expectRelative(Math.sqrt(life.covariance.logSigma), expected.se_log_scale, 1e-5);
    const z = 1.959963984540054;
    expectRelative(life.shape.interval!.low, expected.shape * Math.exp(-z * expected.se_log_scale), 1e-4);
    expectRelative(life.characteristicLife.interval!.high, expected.eta * Math.exp(z * expected.se_mu), 1e-4);
  };
  const lifeOf = (lifetimes: Parameters<typeof weibullLife>[0]): WeibullLife => {
    const life = weibullLife(lifetimes);
    if (life.reason !== null) throw new Error(life.reason);
    return life;
  };

  const nist = reference<{ failures: number[] }, Expected>('6-weibull-nist');
  it(`${nist.title}: ten censored units as one group`, () => {
    const failures = nist.input.failures.map((time) => ({ time, failed: true }));
    check(lifeOf([...failures, { time: 500, failed: false, units: 10 }]), nist.expected);
  });

  const bearings = reference<{ x: number[] }, Expected>('6-weibull-ball-bearing');
  it(bearings.title, () => {
    check(lifeOf(bearings.input.x.map((time) => ({ time, failed: true }))), bearings.expected);
  });

  const trial = reference<{ time: number[]; status: number[] }, unknown>('6-km-6mp');
  const leukaemia = reference<unknown, Expected>('6-weibull-6mp');
  it(leukaemia.title, () => {
    const { time, status } = trial.input;
    check(lifeOf(time.map((value, place) => ({ time: value, failed: status[place] === 1 }))), leukaemia.expected);
  });

  const life = reference<{ eta: number; beta: number }, { mean: number; sd: number }>('6-weibull-nist-moments');
  it(life.title, () => {
    const { mean, deviation } = weibullMoments(life.input.beta, life.input.eta);
    expectAbsolute(mean, life.expected.mean, 0.01);
    expectAbsolute(deviation, life.expected.sd, 0.01);
  });
});

describe('prediction of a coming count', () => {
  type Input = { failures: number; exposure: number; coming: number };
  const { title, cases } = reference<Input, { low: number; high: number }>('added-predicted-count');
  it.each(cases)(`${title}: $input`, ({ input, expected }) => {
    expect(predictCount(input, input.coming, 0.95).interval).toMatchObject(expected);
  });
});
