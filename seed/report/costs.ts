import type { z } from 'zod';
import { roundedMinor } from '#analysis/money/allocate.ts';
import { convertExactly } from '#analysis/money/convert.ts';
import { fraction } from '#analysis/money/fraction.ts';
import type { CostBasis, CostCategory } from '#contracts/taxonomy.ts';
import { type DayNumber, isoDay } from '../calendar.ts';
import { customers } from '../group/customers.ts';
import { hourlyMinor, type Rate, rateOn, standardMinor } from '../group/money.ts';
import type { PlantPlan } from '../group/plants.ts';
import type { Dice, Weights } from '../random.ts';
import type { Finding } from './detection.ts';
import type { DispositionWord } from './traits.ts';

type Category = z.infer<typeof CostCategory>;
type Basis = z.infer<typeof CostBasis>;

export interface Cost {
  category: Category;
  basis: Basis;
  incurredOn: DayNumber;
  amountMinor: number;
  currency: string;
  plantMinor: number;
  rateOn: string | null;
  minutes: number | null;
}
export interface Costed {
  plant: PlantPlan;
  start: DayNumber;
  day: DayNumber;
  age: number;
  finding: Finding;
  disposition: DispositionWord;
  quantity: number;
  customer: string;
  rates: readonly Rate[];
}

const inside: Weights<Category>[] = [
  { rework_labour: 1 },
  { rework_labour: 0.6, parts: 0.4 },
  { scrap: 0.7, rework_labour: 0.3 },
  { rework_labour: 0.4, sorting: 0.6 },
];
const atCustomer: Weights<Category>[] = [
  { customer_charge: 0.7, administration: 0.3 },
  { customer_charge: 0.5, sorting: 0.35, freight: 0.15 },
  { customer_charge: 0.45, sorting: 0.3, travel: 0.15, administration: 0.1 },
];
const inField: Weights<Category>[] = [
  { warranty: 0.8, freight: 0.2 },
  { warranty: 0.75, parts: 0.1, administration: 0.15 },
];

/** Booked for about half; where the money is not in yet, estimated; for the rest the standard cost has to serve. */
function basisOf({ finding, age }: Costed, dice: Dice): Basis | 'mixed' | 'none' {
  const outside = finding.source === 'customer' || finding.source === 'field';
  if (outside)
    return age < 21
      ? dice.weighted({ estimated: 45, mixed: 20, booked: 15, none: 20 })
      : dice.weighted({ booked: 60, mixed: 16, estimated: 9, none: 15 });
  return dice.weighted({ booked: 42, estimated: 14, none: 44 });
}

/** Cost items of a report. They scatter around the standard cost; a few customer campaigns cost many times as much. */
export function costsOf(report: Costed, dice: Dice): Cost[] {
  const basis = basisOf(report, dice);
  if (basis === 'none') return [];
  const { plant, start, day, finding, disposition, quantity } = report;
  const kind = disposition === 'pending' ? 'reworked' : disposition;
  const standard = standardMinor(plant, start, finding.found, kind, day) * quantity;
  const campaign = finding.source === 'customer' && dice.chance(0.12) ? dice.whole(6, 36) : 1;
  const outside = finding.source === 'customer' || finding.source === 'field';
  const total = dice.logNormal(standard * 0.9, outside ? 0.8 : 0.45) * campaign;
  const shares = dice.pick(finding.source === 'field' ? inField : finding.source === 'customer' ? atCustomer : inside);
  const costs = Object.entries(shares).map(([category, share], place) =>
    itemOf(
      report,
      category as Category,
      total * share,
      basis === 'mixed' ? (place ? 'estimated' : 'booked') : basis,
      dice,
    ),
  );
  if (!outside && finding.found >= 6 && dice.chance(0.025)) costs.push(lineStop(report, dice.whole(4, 35)));
  return costs;
}

function itemOf(report: Costed, category: Category, plantMinor: number, basis: Basis, dice: Dice): Cost {
  const { plant, start, day, age } = report;
  const incurredOn = day + dice.whole(0, Math.min(age, 6));
  const common = { category, basis, incurredOn, currency: plant.currency, rateOn: null, minutes: null };
  if (category === 'rework_labour' || category === 'sorting') {
    const hourly = hourlyMinor(plant, start, 'labour', incurredOn);
    const minutes = Math.max(1, Math.round((plantMinor * 60) / hourly));
    const amount = roundedMinor(fraction(BigInt(minutes * hourly), 60n), 'half_up');
    return { ...common, minutes, amountMinor: amount, plantMinor: amount };
  }
  const amount = Math.max(1, Math.round(plantMinor));
  if (category === 'customer_charge') return charged(report, { ...common, amountMinor: amount, plantMinor: amount });
  return { ...common, amountMinor: amount, plantMinor: amount };
}

/** A customer charges in its own currency, converted at the rate of the day. */
function charged({ customer, rates }: Costed, cost: Cost): Cost {
  const { currency } = customers.find(({ code }) => code === customer)!;
  if (currency === cost.currency) return cost;
  const rate = rateOn(rates, currency, cost.currency, isoDay(cost.incurredOn));
  const amountMinor = Math.max(1, Math.round(cost.plantMinor / Number(rate.rate) / 100)) * 100;
  const plantMinor = roundedMinor(convertExactly(amountMinor, currency, cost.currency, rate.rate), 'half_up');
  return { ...cost, currency, amountMinor, plantMinor, rateOn: rate.validFrom };
}

function lineStop({ plant, start, day }: Costed, minutes: number): Cost {
  const hourly = hourlyMinor(plant, start, 'line_stop', day);
  const amount = roundedMinor(fraction(BigInt(minutes * hourly), 60n), 'half_up');
  return {
    category: 'line_stop',
    basis: 'booked',
    incurredOn: day,
    amountMinor: amount,
    currency: plant.currency,
    plantMinor: amount,
    rateOn: null,
    minutes,
  };
}
