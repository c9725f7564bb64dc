import type { Costs, Escapes, Rates } from '#contracts/analyses.ts';
import type { Asked } from './asked.service.ts';
import { presentCosts } from './costs.present.ts';
import { costsByCategory, costsByFound } from './costs.queries.ts';
import { presentEscapes } from './escapes.present.ts';
import { type CellSums, sumsByCell } from './escapes.queries.ts';
import { presentRates } from './rates.present.ts';
import { type Bucket, exposureByBucket, sumsByBucket } from './rates.queries.ts';

export async function ratesOf(asked: Asked, bucket: Bucket): Promise<Rates> {
  const [sums, exposure] = await Promise.all([sumsByBucket(asked, bucket), exposureByBucket(asked, bucket)]);
  return presentRates(asked, bucket, { sums, exposure });
}

export const escapesOf = async (asked: Asked): Promise<Escapes> => presentEscapes(asked, await sumsByCell(asked));

/** What was found in the period, per origin and stage found. */
export const escapeCells = (asked: Asked): Promise<CellSums[]> => sumsByCell(asked);
export type EscapeCell = CellSums;

export async function costsOf(asked: Asked): Promise<Costs> {
  const [rows, categories] = await Promise.all([costsByFound(asked), costsByCategory(asked)]);
  return presentCosts(asked, rows, categories);
}

export interface MonthUnits {
  plantId: string;
  /** `YYYY-MM` */
  month: string;
  units: number;
}

/** Units built per plant and month of the period, as far as production is reported by what the filter names. */
export const productionByMonth = async (asked: Asked): Promise<MonthUnits[]> =>
  (await exposureByBucket(asked, 'month')).map(({ plant_id: plantId, bucket, units }) => ({
    plantId,
    month: bucket.slice(0, 7),
    units,
  }));
