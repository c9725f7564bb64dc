import { displayParts } from '#analysis/money/allocate.ts';
import { factorAsOf } from '#analysis/money/convert.ts';
import type { DatedRate } from '#analysis/money/exchange-rates.ts';
import { addFractions, type Fraction, fraction, multiplyFractions, sumFractions } from '#analysis/money/fraction.ts';

/** Sums in the minor units of each plant's own currency. */
export type PlantSum = { plantId: string; minor: number };

export interface Converter {
  /** in minor units of the target, exactly; 0 for a currency without a rate, which `withoutRate` names */
  exact(sums: readonly PlantSum[]): Fraction;
  /** minor units of the target for one of the plant's; 0 without a rate */
  factor(plantId: string): number;
  /** the rates used, as they are on record */
  rates: { base: string; quote: string; rate: string; rateOn: string }[];
  withoutRate: string[];
}

const zero = fraction(0n);

const toNumber = ({ numerator, denominator }: Fraction) => Number(numerator) / Number(denominator);

/** Converts every plant's money at the rate of one day, so that periods and plants are compared on equal terms. */
export function converter(
  plants: readonly { id: string; currency: string }[],
  to: string,
  rates: readonly DatedRate[],
  day: string,
): Converter {
  const byCurrency = new Map(
    [...new Set(plants.map(({ currency }) => currency))].map((from) => [from, factorAsOf(rates, from, to, day)]),
  );
  const byPlant = new Map(plants.map(({ id, currency }) => [id, byCurrency.get(currency)?.factor ?? zero]));
  const factorFor = (plantId: string) => byPlant.get(plantId) ?? zero;
  const used = [...byCurrency.values()].flatMap((found) => found?.rate ?? []);
  return {
    exact(sums) {
      const minorByFactor = new Map<Fraction, bigint>();
      for (const { plantId, minor } of sums) {
        const factor = factorFor(plantId);
        minorByFactor.set(factor, (minorByFactor.get(factor) ?? 0n) + BigInt(minor));
      }
      return [...minorByFactor].reduce(
        (sum, [factor, minor]) => addFractions(sum, multiplyFractions(fraction(minor), factor)),
        zero,
      );
    },
    factor: (plantId) => toNumber(factorFor(plantId)),
    rates: used.map(({ from, to: quote, rate, day: rateOn }) => ({ base: from, quote, rate, rateOn })),
    withoutRate: [...byCurrency].filter(([, found]) => found === null).map(([currency]) => currency),
  };
}

/** What the rates leave of one whole: whole minor units per part that add up to the total, which is rounded once. */
export const shownParts = (parts: readonly Fraction[]): { total: number; parts: number[] } => displayParts(parts);
export const shownTotal = (parts: readonly Fraction[]): number => displayParts([sumFractions(parts)]).total;
