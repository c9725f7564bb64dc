import { isoDay, yearOf } from '../calendar.ts';
import { people } from '../group/people.ts';
import { plants } from '../group/plants.ts';
import type { Cost } from '../report/costs.ts';
import type { Report } from '../report/report.ts';
import type { World } from '../world.ts';
import { failureRow } from './failure.ts';
import { instant, type Row, type Table } from './row.ts';

/** A report with what it gets when it is filed: id and number. */
export interface Filed {
  report: Report;
  id: string;
  number: string;
  /** running number in its plant and year */
  running: number;
}

export const plantOf = ({ fault }: Report) => fault.run.program.plant;

/** Numbers reports per plant and year found, in the order in which they were filed. */
export function file({ id }: World, reports: Report[]): Filed[] {
  const last = new Map<string, number>();
  return reports
    .map((report, place) => ({ report, place }))
    .sort((a, b) => a.report.moment.reportedAt - b.report.moment.reportedAt || a.place - b.place)
    .map(({ report, place }) => {
      const prefix = `${plantOf(report).code}-${isoDay(report.day).slice(2, 4)}`;
      const running = (last.get(prefix) ?? 0) + 1;
      last.set(prefix, running);
      const number = `${prefix}-${String(running).padStart(5, '0')}`;
      return { report, id: id(`failure ${place}`, report.moment.reportedAt), number, running };
    });
}

function counters({ id }: World, filed: Filed[]): Row[] {
  return plants.flatMap(({ code }) => {
    const own = filed.filter(({ report }) => plantOf(report).code === code);
    const years = [...new Set(own.map(({ report }) => yearOf(report.day)))];
    return years.map((year) => ({
      plant_id: id(`plant ${code}`),
      year,
      last: Math.max(...own.filter(({ report }) => yearOf(report.day) === year).map(({ running }) => running)),
    }));
  });
}

/** Who sorts at a plant. */
export const engineerOf = (plant: string) => people.find((it) => it.plant === plant && it.role === 'engineer')!;

function changeRows({ id }: World, { report, id: failureId }: Filed): Row[] {
  const plant = plantOf(report).code;
  const engineer = engineerOf(plant);
  return report.sortings.map(({ at, cause, subCause, origin, proof, reason }, place) => ({
    id: id(`cause_change ${failureId} ${place}`, at),
    plant_id: id(`plant ${plant}`),
    failure_id: failureId,
    at: instant(at),
    person_id: id(`person ${engineer.email}`),
    actor: engineer.name,
    ...{ cause, sub_cause: subCause, origin, proof, reason },
  }));
}

function costRow({ id }: World, { report, id: failureId }: Filed, cost: Cost, place: number): Row {
  return {
    id: id(`cost_item ${failureId} ${place}`, report.moment.reportedAt),
    plant_id: id(`plant ${plantOf(report).code}`),
    failure_id: failureId,
    ...{ category: cost.category, basis: cost.basis, incurred_on: isoDay(cost.incurredOn) },
    ...{ amount_minor: cost.amountMinor, currency: cost.currency, plant_minor: cost.plantMinor },
    ...{ rate_on: cost.rateOn, minutes: cost.minutes },
  };
}

/** `withPhoto` are the ids of the reports that have one. */
export function reportTables(world: World, filed: Filed[], withPhoto: ReadonlySet<string>): Table[] {
  return [
    { name: 'report_counter', rows: counters(world, filed) },
    {
      name: 'failure',
      rows: filed.map((it) => ({ ...failureRow(world, it), photo_count: withPhoto.has(it.id) ? 1 : 0 })),
    },
    { name: 'cause_change', rows: filed.flatMap((it) => changeRows(world, it)) },
    {
      name: 'cost_item',
      rows: filed.flatMap((it) => it.report.costs.map((cost, place) => costRow(world, it, cost, place))),
    },
  ];
}
