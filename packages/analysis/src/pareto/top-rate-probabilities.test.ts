import { describe, expect, it } from 'vitest';
import { topProbabilities } from './top-probabilities.ts';
import { topRateProbabilities } from './top-rate-probabilities.ts';

describe('topRateProbabilities', () => {
  it('are those of the counts when every bar has the same exposure', () => {
    const counts = [30, 25, 10, 5];
    const bars = counts.map((failures) => ({ failures, exposure: 1024 }));
    expect(topRateProbabilities(bars, { k: 2, seed: 4 })).toEqual(topProbabilities(counts, { k: 2, seed: 4 }));
  });

  it('do not trust a high rate on little production, and leave out a bar without any', () => {
    const [sure, lucky, unknown] = topRateProbabilities(
      [
        { failures: 900, exposure: 100_000 },
        { failures: 1, exposure: 100 },
        { failures: 50, exposure: null },
        { failures: 300, exposure: 100_000 },
      ],
      { k: 1, seed: 4 },
    );
    expect(sure).toBeGreaterThan(0.3);
    expect(lucky).toBeLessThan(0.7);
    expect(unknown).toBeNull();
  });
});
