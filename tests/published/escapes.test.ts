import { describe, expect, it } from 'vitest';
import { gateEffectiveness } from '#analysis/escapes/gate-effectiveness.ts';
import { expectAbsolute, reference } from './reference.ts';

describe('gate effectiveness', () => {
  type Input = { stages: string[]; foundByOrigin: number[][] };
  type Expected = { effectivenessPercent: number[]; overallPercent: number };
  const exercise = reference<Input, Expected>('escape-matrix');
  it.each(exercise.cases)(exercise.title, ({ input, expected }) => {
    const stages = input.stages.map((_, stage) => stage);
    const counts = stages.map((origin) => stages.map((found) => input.foundByOrigin[found]![origin] ?? 0));
    const { gates, overall } = gateEffectiveness(counts);
    gates.forEach(({ effectiveness }, gate) => {
      expectAbsolute(100 * effectiveness.value!, expected.effectivenessPercent[gate]!, 0.005);
    });
    expectAbsolute(100 * overall.value!, expected.overallPercent, 0.005);
  });

  type Serial = { caught: number[]; field: number; total_containment: number; gate_effectiveness: number[] };
  const serial = reference<{ e: number[] }, Serial>('10-gates');
  it(serial.title, () => {
    // 1000 faults made at the first of three gates and caught as the closed form says
    const found = [...serial.expected.caught, serial.expected.field].map((fraction) => Math.round(1000 * fraction));
    const counts = found.map((_, origin) => (origin === 0 ? found : found.map(() => 0)));
    const { gates, overall } = gateEffectiveness(counts);
    gates.forEach(({ effectiveness }, gate) => {
      expectAbsolute(effectiveness.value, serial.expected.gate_effectiveness[gate]!, 1e-12);
    });
    expectAbsolute(overall.value, serial.expected.total_containment, 1e-12);
  });

  it('says so where nothing reached a gate', () => {
    const { gates, overall } = gateEffectiveness([
      [0, 0],
      [0, 0],
    ]);
    expect(gates[0]!.effectiveness.reason).toBe('no_reports');
    expect(overall.reason).toBe('no_reports');
  });
});
