import { describe, expect, it } from 'vitest';
import { acceptanceProbability, lotAcceptanceProbability } from '#analysis/sampling/acceptance-probability.ts';
import { samplingPlan } from '#analysis/sampling/iso-2859-plan.ts';
import {
  type AcceptanceQualityLimit,
  acceptanceQualityLimits,
  codeLetterRows,
  type InspectionLevel,
  inspectionLevels,
  masterCell,
  sampleSizes,
} from '#analysis/sampling/iso-2859-tables.ts';
import { sampleToShow } from '#analysis/sampling/sample-to-show.ts';
import { upperLimitAfterSample } from '#analysis/sampling/upper-limit-after-sample.ts';
import { expectRelative, reference } from './reference.ts';

const cellOf = (letter: string, limit: number) =>
  masterCell(
    sampleSizes.findIndex((row) => row.letter === letter),
    acceptanceQualityLimits.indexOf(limit as AcceptanceQualityLimit),
  );

describe('sampling tables', () => {
  const codes = reference<{ columns: InspectionLevel[] }, Record<string, string[]>>('13-iso2859-codes');
  it(codes.title, () => {
    expect(inspectionLevels).toEqual(codes.input.columns);
    expect(codeLetterRows.map(({ letters }) => [...letters])).toEqual(Object.values(codes.expected));
    expect(codeLetterRows.map(({ largestLot }) => largestLot)).toEqual(
      Object.keys(codes.expected).map((range) => (range.endsWith('+') ? null : Number(range.split('-')[1]))),
    );
  });

  const sizes = reference<unknown, Record<string, number>>('13-iso2859-sizes');
  it(sizes.title, () => {
    expect(Object.fromEntries(sampleSizes.map(({ letter, size }) => [letter, size]))).toEqual(sizes.expected);
  });

  const diagonals = reference<unknown, Record<string, string>>('13-iso2859-diagonal');
  it.each([0, 1])(`${diagonals.title}: acceptance number %i`, (accept) => {
    const cells = diagonals.expected[`Ac${accept} diagonal`]!.split(' ').map((cell) => cell.split('/'));
    for (const [letter, limit] of cells) expect(cellOf(letter!, Number(limit))).toBe(accept);
  });

  it(`${diagonals.title}: along a row, then arrows`, () => {
    const rowOf = (letter: string) => acceptanceQualityLimits.map((limit) => cellOf(letter, limit)).join();
    expect(rowOf('K')).toBe('down,down,down,down,down,0,up,down,1,2,3,5,7,10,14,21');
    expect(rowOf('R')).toBe('up,up,1,2,3,5,7,10,14,21,up,up,up,up,up,up');
  });

  type Lookup = { lot: number; level: InspectionLevel; aql: AcceptanceQualityLimit };
  const lookups = reference<Lookup[], string[]>('13-iso2859-lookup');
  it.each(lookups.input.map((input, place) => ({ ...input, plan: lookups.expected[place]! })))(
    `${lookups.title}: lot of $lot at $aql`,
    ({ lot, level, aql, plan }) => {
      const { planLetter, sampleSize, accept, reject } = samplingPlan(lot, aql, level);
      expect(plan.endsWith(`${planLetter} n${sampleSize} Ac${accept} Re${reject}`)).toBe(true);
    },
  );

  it(`${diagonals.title}: published lookups that follow arrows up and down`, () => {
    expect(samplingPlan(100_000, 0.4, 'S-4')).toMatchObject({ codeLetter: 'J', sampleSize: 125, accept: 1 });
    expect(samplingPlan(100_000, 0.65, 'S-3')).toMatchObject({ codeLetter: 'G', sampleSize: 20, accept: 0 });
    expect(samplingPlan(100_000, 0.25, 'S-4')).toMatchObject({ codeLetter: 'J', sampleSize: 50, accept: 0 });
  });

  it('inspects every item where the sample is the lot, and finds a plan for every lot, limit and level', () => {
    expect(samplingPlan(10, 0.1)).toMatchObject({ planLetter: 'K', sampleSize: 10, everyItem: true });
    for (const lot of [2, 9, 40, 1000, 20_000, 600_000]) {
      for (const limit of acceptanceQualityLimits) {
        for (const level of inspectionLevels) {
          const { accept, sampleSize } = samplingPlan(lot, limit, level);
          expect(accept).toBeGreaterThanOrEqual(0);
          expect(sampleSize).toBeLessThanOrEqual(lot);
        }
      }
    }
  });
});

describe('chance to pass a sample', () => {
  type Case = { n: number; ac: number; fraction?: number; lot?: number; nonconforming?: number };
  const { cases, title } = reference<Case, number>('added-sampling-acceptance');
  it.each(cases)(`${title}: $input`, ({ input, expected }) => {
    const { n, ac, fraction, lot, nonconforming } = input;
    const actual =
      fraction === undefined
        ? lotAcceptanceProbability(n, ac, { size: lot!, nonconforming: nonconforming! })
        : acceptanceProbability(n, ac, fraction);
    expectRelative(actual, expected, 1e-7);
  });
});

describe('what a sample does not exclude', () => {
  const three = reference<{ n: number[] }, { exact: number[] }>('3-rule-of-three');
  it.each(three.input.n)(`${three.title}: none found in %i`, (n) => {
    expectRelative(upperLimitAfterSample(0, n, null).fraction, three.expected.exact[three.input.n.indexOf(n)]!);
  });

  const finite = reference<{ found: number; n: number; lot: number }, number>('added-finite-lot-limit');
  it.each(finite.cases)(`${finite.title}: $input`, ({ input, expected }) => {
    expect(upperLimitAfterSample(input.found, input.n, input.lot).items).toBe(expected);
  });

  it('knows a lot of which every item was inspected', () => {
    expect(upperLimitAfterSample(3, 200, 200)).toMatchObject({ items: 3, fraction: 0.015 });
    expect(upperLimitAfterSample(0, 0, 40)).toMatchObject({ items: 40, fraction: 1 });
  });

  const run = reference<{ C: number[]; R: number[] }, Record<string, number>>('3-success-run');
  it(run.title, () => {
    for (const C of run.input.C) {
      for (const R of run.input.R) expect(sampleToShow(1 - R, null, C)).toBe(run.expected[`C=${C} R=${R}`]);
    }
  });

  it('a lot needs fewer than a series, and as many as make its limit hold', () => {
    for (const lot of [30, 100, 500, 5000]) {
      const needed = sampleToShow(0.05, lot);
      expect(needed).toBeLessThanOrEqual(59);
      expect(upperLimitAfterSample(0, needed, lot).items!).toBeLessThanOrEqual(Math.floor(0.05 * lot));
      expect(upperLimitAfterSample(0, needed - 1, lot).items!).toBeGreaterThan(Math.floor(0.05 * lot));
    }
  });
});
