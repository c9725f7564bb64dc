import { describe, expect, it } from 'vitest';
import { type CauseName, causes, perCause } from './causes.ts';
import { type Beta, baseFloor, baseRates, learnFinding, type SuggestionModel } from './model.ts';
import { enoughIsKnown, entropy, nextChecks } from './next-check.ts';
import { findingPriors } from './priors.ts';
import { type Answer, discount, probabilities, suggest } from './suggest.ts';

/** A model of two causes (the others are as good as impossible) and findings with the given P(yes | tooling), P(yes | handling). */
function twoCauses(base: number, rates: Record<string, readonly [number, number]>, dependence = 0): SuggestionModel {
  const many = 1e9;
  const beta = (yes: number): Beta => ({ yes: yes * many, no: (1 - yes) * many });
  return {
    findings: new Map(
      Object.entries(rates).map(([code, [tooling, handling]]) => [
        code,
        {
          code,
          group: 'terminal',
          minutes: 1,
          beta: Object.fromEntries(causes.map((it) => [it, beta(it === 'tooling' ? tooling : handling)])) as Record<
            CauseName,
            Beta
          >,
        },
      ]),
    ),
    base: perCause((it) => (it === 'tooling' ? base : it === 'handling' ? 1 - base : 1e-300)),
    baseCases: 1e9,
    dependence: new Map([['terminal', dependence]]),
    temperature: 1,
    cases: { group: 0, plant: 0 },
  };
}
const taken = (...answers: [string, Answer][]) => new Map(answers);

describe('suggestion', () => {
  it('updates by Bayes: 1 % base, 79.2 % against 9.6 % gives 7.7 % (Eddy 1982; reference 9-eddy)', () => {
    const model = twoCauses(0.01, { mark: [0.792, 0.096] });
    expect(probabilities(model, taken(['mark', 'yes'])).tooling).toBeCloseTo(0.0769230769, 6);
  });

  it('weighs a finding by its log likelihood ratio', () => {
    const model = twoCauses(0.5, { mark: [0.8, 0.2] });
    expect(suggest(model, taken(['mark', 'yes'])).weights[0]!.logRatio.tooling).toBeCloseTo(Math.log(4), 6);
    expect(suggest(model, taken(['mark', 'no'])).weights[0]!.logRatio.tooling).toBeCloseTo(-Math.log(4), 6);
  });

  it('gives "could not tell" and unknown findings no weight', () => {
    const model = twoCauses(0.3, { mark: [0.8, 0.2] });
    expect(probabilities(model, taken(['mark', 'could_not_tell'], ['unheard_of', 'yes'])).tooling).toBeCloseTo(0.3, 12);
  });

  it('counts one fact twice only as far as its group is independent', () => {
    const rates = { mark: [0.8, 0.2], same: [0.8, 0.2] } as const;
    const both = taken(['mark', 'yes'], ['same', 'yes']);
    expect(probabilities(twoCauses(0.5, rates, 1), both).tooling).toBeCloseTo(0.8, 6);
    expect(probabilities(twoCauses(0.5, rates, 0), both).tooling).toBeCloseTo(16 / 17, 6);
    expect(discount(1, 0.7)).toBe(1);
  });

  it('keeps a rare cause reachable, however often another was confirmed', () => {
    const seen = perCause((it) => (it === 'tooling' ? 100_000 : 0));
    const { base } = baseRates({ group: seen, plant: seen, part: seen });
    expect(base.adhesive).toBeGreaterThanOrEqual(baseFloor);
    expect(causes.reduce((sum, it) => sum + base[it], 0)).toBeCloseTo(1, 12);
  });

  it('learns a finding from the plant at once and from other plants only up to the pooling strength', () => {
    const prior = findingPriors.find(({ code }) => code === 'residue')!;
    const seen = (yes: number) => ({ yes: perCause(() => yes), no: perCause(() => 0) });
    const mean = (beta: Beta) => beta.yes / (beta.yes + beta.no);
    const fromOthers = learnFinding(prior, seen(1000)).beta.tooling;
    const fromPlant = learnFinding(prior, undefined, seen(1000)).beta.tooling;
    expect(fromOthers.yes + fromOthers.no).toBeCloseTo(25, 9);
    expect(mean(fromOthers)).toBeGreaterThan(0.98);
    expect(fromPlant.yes + fromPlant.no).toBeCloseTo(1012, 9);
  });

  it('widens the interval where little was learned', () => {
    const width = (strength: number) => {
      const model = twoCauses(0.5, { mark: [0.8, 0.2] });
      const finding = model.findings.get('mark')!;
      for (const it of causes) {
        const { yes, no } = finding.beta[it];
        finding.beta[it] = { yes: (yes / (yes + no)) * strength, no: (no / (yes + no)) * strength };
      }
      const { low, high } = suggest(model, taken(['mark', 'yes'])).causes[0]!.interval;
      return high - low;
    };
    expect(width(10)).toBeGreaterThan(2 * width(200));
  });

  it('is unsure of the base rates too: before any case and finding the interval is wide, after many it is narrow', () => {
    const nothing = perCause(() => 0);
    const width = (cases: number) => {
      const model = {
        ...twoCauses(0.5, {}),
        ...baseRates({ group: nothing, plant: nothing, part: perCause(() => cases) }),
      };
      const { interval } = suggest(model, new Map()).causes[0]!;
      return interval.high - interval.low;
    };
    expect(width(0)).toBeGreaterThan(0.15);
    expect(width(1000)).toBeLessThan(0.02);
  });
});

describe('next best check', () => {
  it('has the entropy of Quinlan’s table: 9 against 5 is 0.940 bits (Quinlan 1986; reference 9-information-gain)', () => {
    expect(entropy(perCause((it) => (it === 'tooling' ? 9 / 14 : it === 'handling' ? 5 / 14 : 0)))).toBeCloseTo(
      0.9402859586706309,
      9,
    );
  });

  it('expects 0.3305 bits from a test with 90 % and 20 % positive at 30 % prior (Lindley 1956; reference 9-eig-binary-test, recomputed with scipy)', () => {
    const [check] = nextChecks(twoCauses(0.3, { test: [0.9, 0.2] }), new Map());
    expect(check!.gain).toBeCloseTo(0.33045212426, 6);
  });

  it('prefers the cheaper of two equal checks and stops asking when the lead cannot change', () => {
    const model = twoCauses(0.5, { dear: [0.9, 0.1], cheap: [0.9, 0.1] });
    model.findings.get('dear')!.minutes = 10;
    expect(nextChecks(model, new Map())[0]!.finding).toBe('cheap');
    expect(nextChecks(model, new Map(), new Set(['cheap'])).map(({ finding }) => finding)).toEqual(['dear']);
    expect(enoughIsKnown(nextChecks(model, new Map()))).toBe(false);
    expect(enoughIsKnown(nextChecks(twoCauses(0.999, { cheap: [0.6, 0.4] }), new Map()))).toBe(true);
  });
});
