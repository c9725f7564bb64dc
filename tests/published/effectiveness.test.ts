import { describe, expect, it } from 'vitest';
import { neededExposure } from '#analysis/effectiveness/needed-exposure.ts';
import { isLowerShown, powerToShow } from '#analysis/effectiveness/power-to-show.ts';
import { rateRatio } from '#analysis/rates/rate-ratio.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

const poissonMass = (mean: number, upTo: number): number[] => {
  const masses = [Math.exp(-mean)];
  for (let count = 1; count <= upTo; count++) masses.push((masses[count - 1]! * mean) / count);
  return masses;
};

describe('power of the conditional test', () => {
  type Input = { ratio: number; alpha_one_sided: number; m: number[] };
  const halved = reference<Input, { power: number[] }>('2-power-halved-equal-exposure');
  it.each(halved.input.m.map((m, place) => ({ m, power: halved.expected.power[place]! })))(
    `${halved.title}: $m before`,
    ({ m, power }) => {
      const { ratio, alpha_one_sided: alpha } = halved.input;
      const proof = { looks: 'one', promisedRatio: ratio, alpha } as const;
      const average = poissonMass(m, 200).reduce(
        (sum, mass, failures) => sum + mass * powerToShow({ failures, exposure: 1 }, 1, ratio * m, proof),
        0,
      );
      expectAbsolute(average, power, 1e-6);
    },
  );
});

describe('exposure needed to show a reduction', () => {
  type Plan = { c: number; m_old: number; power: number; alpha: number };
  const known = reference<{ rate_ratio: number }, Record<string, Plan>>('3-halving-known-baseline');
  it.each(Object.entries(known.expected))(`${known.title}: %s, as the limit of a long time before`, (name, plan) => {
    const before = { failures: 10_000_000, exposure: 10_000_000 };
    const power = name.includes('pw=.9') ? 0.9 : 0.8;
    const needed = neededExposure(before, 0.5, { looks: 'one', alpha: plan.alpha, power });
    expect(needed).toMatchObject({ mostFailures: plan.c });
    expectRelative(needed.value, plan.m_old, 1e-5);
    if (needed.value !== null) expectRelative(needed.power, plan.power, 1e-5);
  });

  type Zero = { k0: number[]; alpha: number };
  const zero = reference<Zero, Record<string, number>>('3-zero-after-needed-exposure');
  it.each(zero.input.k0)(`${zero.title}: %i before, none after`, (failures) => {
    const needed = neededExposure({ failures, exposure: 1 }, 1, { looks: 'one', alpha: zero.input.alpha });
    expectRelative(needed.value, zero.expected[failures]!);
  });

  type BeforeAfter = { x_before: number; T_before: number; x_after: number; T_after: number };
  const fix = reference<BeforeAfter, { p_greater: number; ci95: [number, number] }>('2-ca-effect-12-3');
  it(`${fix.title}: the one-look test is the conditional exact test`, () => {
    const before = { failures: fix.input.x_before, exposure: fix.input.T_before };
    const after = { failures: fix.input.x_after, exposure: fix.input.T_after };
    const { p, interval } = rateRatio(after, before);
    expectRelative(p!.less, fix.expected.p_greater);
    expectRelative(1 / interval!.high!, fix.expected.ci95[0]);
    const shownAt = (alpha: number) => isLowerShown(before, after, { looks: 'one', promisedRatio: 0.5, alpha });
    expect(shownAt(fix.expected.p_greater * (1 + 1e-6))).toBe(true);
    expect(shownAt(fix.expected.p_greater * (1 - 1e-6))).toBe(false);
  });
});
