import { describe, expect, it, vi } from 'vitest';
import { gateEffectiveness } from '../escapes/gate-effectiveness.ts';
import { poissonVariate } from '../numeric/poisson-variate.ts';
import { type Random, seededRandom } from '../numeric/random.ts';
import { gateValues } from './gate-value.ts';
import { maturedEffectiveness } from './matured-effectiveness.ts';

/** Simulations take as long as the machine needs. */
vi.setConfig({ testTimeout: 120_000 });

/** 400 faults a year made at the first stage, 200 at the second; two gates; four stages of which the last is the field. */
const effectiveness = [0.6, 0.3, 0.8];

function simulate(random: Random, fieldMaturity: number): number[][] {
  const counts = Array.from({ length: 4 }, () => [0, 0, 0, 0]);
  [400, 200].forEach((mean, origin) => {
    for (let fault = poissonVariate(mean, random); fault > 0; fault--) {
      let stage = origin;
      while (stage < 3 && random() >= effectiveness[stage]!) stage += 1;
      if (stage < 3 || random() < fieldMaturity) counts[origin]![stage]! += 1;
    }
  });
  return counts;
}

describe('maturedEffectiveness', () => {
  it('covers the truth as often as it says although most field faults are still to come, where raw figures do not', () => {
    const random = seededRandom(6);
    const rounds = 200;
    let [covered, raw] = [0, 0];
    for (let round = 0; round < rounds; round++) {
      const counts = simulate(random, 0.3);
      const last = maturedEffectiveness({ counts, fieldMaturity: 0.3 }, { seed: round, draws: 500 })[2]!.effectiveness;
      if (last.interval!.low <= 0.8 && 0.8 <= last.interval!.high!) covered += 1;
      const unadjusted = gateEffectiveness(counts).gates[2]!.effectiveness.interval!;
      if (unadjusted.low <= 0.8) raw += 1;
    }
    expect(covered / rounds).toBeGreaterThan(0.9);
    expect(raw / rounds).toBeLessThan(0.1);
  });

  it('equals the plain measure when the field is mature, and says when nothing reached a gate', () => {
    const counts = simulate(seededRandom(2), 1);
    const plain = gateEffectiveness(counts).gates;
    maturedEffectiveness({ counts, fieldMaturity: 1 }, { seed: 1 }).forEach(({ effectiveness: found }, gate) => {
      expect(found.value).toBeCloseTo(plain[gate]!.effectiveness.value!, 12);
      expect(Math.abs(found.interval!.low - plain[gate]!.effectiveness.interval!.low)).toBeLessThan(0.02);
    });
    const empty = [
      [0, 0],
      [0, 0],
    ];
    expect(maturedEffectiveness({ counts: empty, fieldMaturity: 1 }, { seed: 1 })[0]!.effectiveness.reason).toBe(
      'no_reports',
    );
    expect(() => maturedEffectiveness({ counts, fieldMaturity: 0 }, { seed: 1 })).toThrow(RangeError);
  });
});

describe('gateValues', () => {
  const costByStage = [200, 500, 2500, 60_000];
  const counts = simulate(seededRandom(9), 1);
  const input = { counts, fieldMaturity: 1, costByStage, years: 1 };
  const { stages, gates } = gateValues(input, { seed: 4, draws: 400 });

  it('values a point at what the yearly cost falls by when one point more is found', () => {
    for (const gate of [0, 1, 2]) {
      const e = [0, 1, 2].map((g) => {
        const found = counts.reduce((sum, row, origin) => sum + (origin <= g ? row[g]! : 0), 0);
        const arrived = counts.reduce(
          (sum, row, origin) => sum + (origin <= g ? row.slice(g).reduce((a, b) => a + b, 0) : 0),
          0,
        );
        return found / arrived;
      });
      const made = counts.map((row) => row.reduce((a, b) => a + b, 0));
      const yearly = (chances: number[]): number => {
        let [inside, cost] = [0, 0];
        chances.forEach((chance, g) => {
          inside += made[g]!;
          cost += inside * chance * costByStage[g]!;
          inside *= 1 - chance;
        });
        return cost + inside * costByStage[3]!;
      };
      const better = e.map((chance, g) => (g === gate ? chance + 0.01 : chance));
      expect(gates[gate]!.valueOfOnePoint.value).toBeCloseTo(yearly(e) - yearly(better), 6);
    }
  });

  it('costs a fault more the fewer gates are left, and finds the gate where money does most', () => {
    expect(stages[3]!.costOfOneFault.value).toBe(60_000);
    expect(stages[0]!.costOfOneFault.value!).toBeLessThan(stages[3]!.costOfOneFault.value!);
    for (const { valueOfOnePoint } of gates) {
      expect(valueOfOnePoint.interval!.low).toBeLessThan(valueOfOnePoint.value!);
      expect(valueOfOnePoint.interval!.high!).toBeGreaterThan(valueOfOnePoint.value!);
    }
    expect(gates.reduce((sum, { probabilityBest }) => sum + probabilityBest, 0)).toBeCloseTo(1, 12);
    const cheap = gateValues({ ...input, costOfOnePoint: [1e6, 10, 1e6] }, { seed: 4, draws: 200 });
    expect(cheap.gates[1]!.probabilityBest).toBe(1);
    expect(cheap.gates[1]!.perMoneySpent!.value).toBeCloseTo(cheap.gates[1]!.valueOfOnePoint.value! / 10, 9);
  });

  it('gives the same figures twice, none for a gate that is not there, and says what is missing', () => {
    expect(gateValues(input, { seed: 4, draws: 400 })).toEqual({ stages, gates });
    const without = gateValues({ ...input, gates: [0, 2] }, { seed: 4, draws: 100 });
    expect(without.gates[1]!.valueOfOnePoint.value).toBe(0);
    expect(gateValues({ ...input, costByStage: [1, 2, null, 4] }, { seed: 1 }).stages[0]!.costOfOneFault.reason).toBe(
      'no_cost',
    );
  });
});
