import { convertMinor, type Rate } from '#api/features/failures/conversion.rules.ts';
import type { FieldName } from '#contracts/import-fields.ts';
import { minorDigits } from '#contracts/shared/currency.ts';
import { costCategories } from '#contracts/taxonomy.ts';
import { toMinor } from '../interpret/money.ts';
import { Refusal } from '../interpret/refusal.ts';
import type { RowValues } from './row-values.ts';

export interface RowCosts {
  categories: string[];
  minor: number[];
  /** In the plant's currency, each item rounded once. */
  plantMinor: number[];
  currency: string | null;
  rateOn: string | null;
  basis: string | null;
}

/** The rates that lead from one currency to another on a day; null where there are none. */
export type WayOf = (from: string, to: string, day: string) => Rate[] | null;

const none: RowCosts = { categories: [], minor: [], plantMinor: [], currency: null, rateOn: null, basis: null };
const categoryFields = costCategories.map((category) => [category, `cost.${category}` as FieldName] as const);

/** The row's amounts. An amount of zero is no cost item: lists fill empty cells with zeros. */
export function readCosts(row: RowValues, plantCurrency: string, foundOn: string, wayOf: WayOf): RowCosts {
  const amounts = new Map<string, { field: FieldName; decimal: string }>();
  for (const [category, field] of categoryFields) {
    const decimal = row.has(field) ? row.value(field) : null;
    if (decimal !== null && decimal !== '0') amounts.set(category, { field, decimal });
  }
  const single = row.has('costAmount') ? row.value('costAmount') : null;
  if (single !== null && single !== '0') {
    const category = row.value('costCategory');
    if (category === null) row.refuse('costAmount', 'amount_without_category');
    else if (amounts.has(category)) row.refuse('costAmount', 'amount_twice');
    else amounts.set(category, { field: 'costAmount', decimal: single });
  }
  if (amounts.size === 0) return none;
  const currency = row.value('costCurrency') ?? plantCurrency;
  const basis = row.value('costBasis') ?? row.refuse('costBasis', 'missing');
  const way = wayOf(currency, plantCurrency, foundOn);
  if (way === null) row.refuse('costCurrency', 'no_exchange_rate');
  const [rateOn = null] = (way ?? []).map(({ on }) => on).sort();
  const costs: RowCosts = { categories: [], minor: [], plantMinor: [], currency, basis, rateOn };
  for (const [category, { field, decimal }] of amounts) {
    const minor = toMinor(decimal, minorDigits(currency));
    if (minor instanceof Refusal) row.refuse(field, minor.code);
    else if (way) {
      costs.categories.push(category);
      costs.minor.push(minor);
      costs.plantMinor.push(way.length === 0 ? minor : Number(convertMinor(minor, currency, plantCurrency, way)));
    }
  }
  return costs;
}
