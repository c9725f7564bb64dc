import { describe, it } from 'vitest';
import { escalationFactors } from '#analysis/costs/escalation-factors.ts';
import { expectAbsolute, reference } from './reference.ts';

describe('escalation factor', () => {
  type Sample = [count: number, mean: number, deviation: number];
  type Input = { first: Sample; second: Sample };
  const { title, cases } = reference<Input, { low: number; high: number }>('added-welch-interval');

  const sums = (stage: number, [count, mean, deviation]: Sample) => ({
    stage,
    count,
    sumLog: count * mean,
    sumLogSquares: (count - 1) * deviation ** 2 + count * mean ** 2,
  });

  it.each(cases)(`${title}: $input`, ({ input, expected }) => {
    const stages = [sums(2, input.first), sums(1, input.second)];
    const { interval } = escalationFactors(stages, { baseStage: 1, seed: 1, draws: 40_000 })[0]!.factor;
    expectAbsolute(Math.log(interval!.low), expected.low, 0.02);
    expectAbsolute(Math.log(interval!.high!), expected.high, 0.02);
  });
});
