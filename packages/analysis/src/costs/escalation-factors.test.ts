import { describe, expect, it } from 'vitest';
import { seededRandom } from '../numeric/random.ts';
import { normalVariate } from '../numeric/variates.ts';
import { escalationFactors, escalationFactorsOfSamples, type LogCosts } from './escalation-factors.ts';
import { ruleOfTen } from './rule-of-ten.ts';

function sample(stage: number, count: number, meanLog: number, deviation: number, seed: number) {
  const random = seededRandom(seed);
  return { stage, costs: Array.from({ length: count }, () => Math.exp(meanLog + deviation * normalVariate(random))) };
}

const sums = ({ stage, costs }: { stage: number; costs: number[] }): LogCosts => ({
  stage,
  count: costs.length,
  sumLog: costs.reduce((sum, cost) => sum + Math.log(cost), 0),
  sumLogSquares: costs.reduce((sum, cost) => sum + Math.log(cost) ** 2, 0),
});

describe('escalationFactors', () => {
  const samples = [sample(5, 300, 6, 0.8, 1), sample(6, 200, 7.5, 1, 2), sample(10, 60, 10.6, 1.2, 3)];

  it('is the ratio of geometric means, from sums as from every cost', () => {
    const options = { baseStage: 5, seed: 4 };
    const fromSums = escalationFactors(samples.map(sums), options);
    const fromSamples = escalationFactorsOfSamples(samples, options);
    fromSums.forEach(({ factor }, place) => {
      const other = fromSamples[place]!.factor;
      expect(factor.value).toBeCloseTo(other.value!, 6);
      expect(Math.log(factor.interval!.low)).toBeCloseTo(Math.log(other.interval!.low), 1);
      expect(Math.log(factor.interval!.high!)).toBeCloseTo(Math.log(other.interval!.high!), 1);
    });
  });

  it('is 1 for the base stage', () => {
    expect(escalationFactors(samples.map(sums), { baseStage: 5, seed: 4 })[0]!.factor.value).toBe(1);
  });

  it('says why a factor cannot be given', () => {
    const one = sums(sample(7, 1, 5, 0, 1));
    const none = { stage: 8, count: 0, sumLog: 0, sumLogSquares: 0 };
    const reasons = escalationFactors([sums(samples[0]!), one, none], { baseStage: 5, seed: 1 });
    expect(reasons.map(({ factor }) => factor.reason)).toEqual([null, 'too_few', 'no_cost']);
    expect(escalationFactors([one], { baseStage: 5, seed: 1 })[0]!.factor.reason).toBe('no_cost');
    expect(escalationFactorsOfSamples([{ stage: 5, costs: [] }], { baseStage: 5, seed: 1 })[0]!.factor.reason).toBe(
      'no_cost',
    );
  });

  it('covers the true factor about as often as it says', () => {
    let covered = 0;
    const rounds = 400;
    for (let round = 0; round < rounds; round++) {
      const stages = [sums(sample(5, 12, 6, 0.8, 2 * round)), sums(sample(6, 8, 8, 1, 2 * round + 1))];
      const { interval } = escalationFactors(stages, { baseStage: 5, seed: round, draws: 400 })[1]!.factor;
      if (interval!.low <= Math.exp(2) && Math.exp(2) <= interval!.high!) covered += 1;
    }
    expect(covered / rounds).toBeGreaterThan(0.92);
    expect(covered / rounds).toBeLessThanOrEqual(0.99);
  });
});

describe('ruleOfTen', () => {
  it('is tenfold a check slipped through, and marked as common practice', () => {
    expect(ruleOfTen(2, 3)).toEqual({ factor: 1, basis: 'common_practice' });
    expect([5, 6, 8, 10].map((found) => ruleOfTen(2, found).factor)).toEqual([10, 100, 1000, 10_000]);
  });
});
