/** What the faults of each cause cost, in the currency of the answer. */
import type { Converter } from '#api/features/analyses/money.rules.ts';
import type { GateMoney } from '#contracts/gates.ts';
import { Cause } from '#contracts/taxonomy.ts';
import type { WhatIfResult } from '#contracts/what-if.ts';

export interface CauseSums {
  key: string | number | null;
  plant_id: string;
  reports: number;
  booked: number;
  estimate: number;
  money_squared: number;
}

const added = (rows: readonly CauseSums[], of: (row: CauseSums) => number) =>
  rows.reduce((sum, row) => sum + of(row), 0);

function moneyOf(rows: readonly CauseSums[], money: Converter) {
  const booked = added(rows, (row) => row.booked * money.factor(row.plant_id));
  const estimate = added(rows, (row) => row.estimate * money.factor(row.plant_id));
  return { booked, estimate, bookedMinor: Math.round(booked), estimateMinor: Math.round(estimate) };
}

const isSorted = ({ key }: CauseSums) => key !== null && key !== 'undetermined';

export const costsByCause = (
  rows: readonly CauseSums[],
  money: Converter,
  counting: GateMoney,
): WhatIfResult['costs'] =>
  [...Map.groupBy(rows.filter(isSorted), ({ key }) => Cause.parse(key))]
    .map(([cause, own]) => {
      const { booked, estimate, bookedMinor, estimateMinor } = moneyOf(own, money);
      return {
        cause,
        reports: added(own, (row) => row.reports),
        bookedMinor,
        estimateMinor,
        sumMinor: counting === 'booked' ? booked : booked + estimate,
        sumOfSquares: added(own, (row) => row.money_squared * money.factor(row.plant_id) ** 2),
      };
    })
    .sort((a, b) => b.sumMinor - a.sumMinor);

export function unsortedOf(rows: readonly CauseSums[], money: Converter): WhatIfResult['unsorted'] {
  const open = rows.filter((row) => !isSorted(row));
  const { bookedMinor, estimateMinor } = moneyOf(open, money);
  return { reports: added(open, (row) => row.reports), bookedMinor, estimateMinor };
}
