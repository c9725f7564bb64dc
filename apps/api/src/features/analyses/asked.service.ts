import { createHash } from 'node:crypto';
import type { z } from 'zod';
import { addDays } from '#analysis/calendar/day.ts';
import type { Period } from '#analysis/calendar/period.ts';
import { type Actor, choosePlants, type PlantScope } from '#api/platform/actor.ts';
import { notFound } from '#api/platform/problems.ts';
import type { AnalysisHead } from '#contracts/analyses.ts';
import { type AnalysisFilter, Filter } from '#contracts/shared/filter.ts';
import type { Database } from '#db/client.ts';
import { type AskedPlant, readGroup, readPlants } from './asked.queries.ts';
import { type Converter, converter } from './money.rules.ts';
import { type Calendar, calendarOf, periodAsked } from './period.rules.ts';

/** A question with everything that is settled before the first count. */
export interface Asked {
  db: Database;
  /** the filter with its period filled in */
  filter: Filter;
  scope: PlantScope;
  period: Period;
  plants: AskedPlant[];
  own: Calendar;
  money: Converter;
  head: z.infer<typeof AnalysisHead>;
  /** the same question always gets the same random numbers */
  seed: number;
}

type Query = AnalysisFilter & Record<string, unknown>;

/** Settles plants, period and currency of a question. `periodOf` gives the period where it is not the filter's own. */
export async function prepare(
  db: Database,
  actor: Actor,
  query: Query,
  at: Date,
  periodOf: (own: Calendar) => Period = (own) => periodAsked(query, at, own),
): Promise<Asked> {
  const scope = choosePlants(actor, 'analyses.read', query.plant);
  const [plants, group] = await Promise.all([readPlants(db, scope), readGroup(db)]);
  if (query.plant?.some((id) => !plants.some((plant) => plant.id === id))) throw notFound('plant');
  const own = calendarOf(plants);
  const period = periodOf(own);
  const currency = query.currency ?? (plants.length === 1 ? plants[0]!.currency : group.currency);
  const money = converter(plants, currency, group.rates, lastDay(period));
  return {
    db,
    filter: { ...filterOf(query), ...period },
    scope,
    period,
    plants,
    own,
    money,
    head: {
      period,
      plants: plants.map(({ id, code }) => ({ id, code })),
      currency,
      rates: money.rates,
      withoutRate: money.withoutRate,
    },
    seed: seedOf({ ...query, ...period, plant: plants.map(({ id }) => id) }),
  };
}

const filterOf = (query: Query): Filter =>
  Object.fromEntries(Object.entries(query).filter(([field]) => field in Filter.shape));

const lastDay = ({ to }: Period) => addDays(to, -1);

function seedOf(question: object): number {
  const text = JSON.stringify(Object.entries(question).sort(([a], [b]) => (a < b ? -1 : 1)));
  return createHash('sha256').update(text).digest().readInt32LE();
}
