import { isoDay } from '../calendar.ts';
import { costedDispositions, hourlyMinor, type Rate, standardMinor, validFromDays } from '../group/money.ts';
import { type PlantPlan, plants } from '../group/plants.ts';
import { commonStagesOf } from '../report/detection.ts';
import type { World } from '../world.ts';
import type { Row, Table } from './row.ts';

const live = { retired_at: null, version: 1 };

/** Hourly rates, standard costs (none for what still waits for its disposition), exchange rates. */
export function moneyTables(world: World, rates: readonly Rate[]): Table[] {
  const { id, start } = world;
  const perPlant = (rowsOf: (plant: PlantPlan, day: number) => Row[]) =>
    plants.flatMap((plant) => validFromDays(start).flatMap((day) => rowsOf(plant, day)));
  return [
    {
      name: 'cost_rate',
      rows: perPlant((plant, day) =>
        (['labour', 'line_stop'] as const).map((kind) => ({
          id: id(`cost_rate ${plant.code} ${kind} ${day}`),
          plant_id: id(`plant ${plant.code}`),
          ...{ kind, valid_from: isoDay(day), hourly_minor: hourlyMinor(plant, start, kind, day) },
          ...live,
        })),
      ),
    },
    {
      name: 'standard_cost',
      rows: perPlant((plant, day) =>
        commonStagesOf(plant.code).flatMap((stage) =>
          costedDispositions.map((disposition) => ({
            id: id(`standard_cost ${plant.code} ${stage} ${disposition} ${day}`),
            plant_id: id(`plant ${plant.code}`),
            ...{ stage, disposition, valid_from: isoDay(day) },
            terminal_minor: standardMinor(plant, start, stage, disposition, day),
            ...live,
          })),
        ),
      ),
    },
    {
      name: 'exchange_rate',
      rows: rates.map(({ base, quote, validFrom, rate }) => ({
        id: id(`exchange_rate ${base} ${quote} ${validFrom}`),
        ...{ base, quote, valid_from: validFrom, rate },
        ...live,
      })),
    },
  ];
}
