import { addMonths, type DayNumber, dayNumber, isoDay, monthStart, yearOf } from '../calendar.ts';
import { type Dice, hashOf } from '../random.ts';
import type { PlantPlan } from './plants.ts';

export const currencies = ['EUR', 'PLN', 'MXN', 'CNY', 'USD'] as const;
/** Round figures near which the invented rates wander: units of the currency for one euro. */
const aroundEuro: Record<string, number> = { EUR: 1, PLN: 4.3, MXN: 20, CNY: 7.8, USD: 1.1 };

export interface Rate {
  base: string;
  quote: string;
  validFrom: string;
  rate: string;
}

/** Rates of every pair on the first of each month, from the month before the period on. */
export function monthlyRates(dice: Dice, start: DayNumber, anchor: DayNumber): Rate[] {
  const euro = { ...aroundEuro };
  const rates: Rate[] = [];
  for (let month = addMonths(monthStart(start), -1); month <= anchor; month = addMonths(month, 1)) {
    for (const base of currencies)
      for (const quote of currencies.filter((it) => it !== base))
        rates.push({ base, quote, validFrom: isoDay(month), rate: (euro[quote]! / euro[base]!).toFixed(6) });
    for (const currency of currencies.slice(1)) euro[currency] = dice.logNormal(euro[currency]!, 0.012);
  }
  return rates;
}

/** The rate in force on a day. */
export function rateOn(rates: readonly Rate[], base: string, quote: string, day: string): Rate {
  const found = rates.findLast((it) => it.base === base && it.quote === quote && it.validFrom <= day);
  if (!found) throw new Error(`no rate from ${base} to ${quote} on ${day}`);
  return found;
}

/** What one reworked terminal costs by stage found, in euro at cost level 1. Invented; steps differ, none is exactly tenfold. */
const byStage = [0.18, 0.32, 0.55, 0.95, 1.6, 4.4, 9.5, 27, 46, 330];
const byDisposition = {
  reworked: 1,
  scrapped: 1.35,
  sorted: 0.7,
  replaced: 1.5,
  returned: 1.2,
  used_as_is: 0.25,
} as const;
type Costed = keyof typeof byDisposition;
export const costedDispositions = Object.keys(byDisposition) as Costed[];

/** Days from which standard costs and hourly rates hold: before the period, and from its first January on. */
export const validFromDays = (start: DayNumber): [DayNumber, DayNumber] => [
  dayNumber(`${yearOf(start)}-01-01`),
  dayNumber(`${yearOf(start) + 1}-01-01`),
];

/** Price level of a day: everything rose by 4 % in January. */
const level = (plant: PlantPlan, start: DayNumber, day: DayNumber) =>
  plant.costLevel * aroundEuro[plant.currency]! * (day >= validFromDays(start)[1] ? 1.04 : 1) * 100;

/** Standard cost of one terminal in minor units of the plant's currency; each plant has its own steps. */
export function standardMinor(plant: PlantPlan, start: DayNumber, stage: number, kind: Costed, day: DayNumber): number {
  const own = 0.75 + ((hashOf(`${plant.code} ${stage}`) >>> 0) % 51) / 100;
  return Math.round(byStage[stage - 1]! * byDisposition[kind] * own * level(plant, start, day));
}

/** Cost of an hour in minor units of the plant's currency. */
export function hourlyMinor(plant: PlantPlan, start: DayNumber, kind: 'labour' | 'line_stop', day: DayNumber): number {
  return Math.round((kind === 'labour' ? 44 : 1150) * level(plant, start, day));
}
