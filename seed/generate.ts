import { createHash } from 'node:crypto';
import { dayNumber, isoDay } from './calendar.ts';
import { copyText } from './copy-text.ts';
import { monthlyRates } from './group/money.ts';
import { choosePictures, type Picture } from './photo/choose.ts';
import { runs } from './production.ts';
import { type Report, reportMaker } from './report/report.ts';
import { isReported } from './scenario/production-gaps.ts';
import { faultMaker } from './scenario/scenario.ts';
import { forceMaker } from './tables/force.ts';
import { masterData } from './tables/master-data.ts';
import { moneyTables } from './tables/money.ts';
import { peopleTables } from './tables/people.ts';
import { type Filed, file, reportTables } from './tables/reports.ts';
import type { Row, Table } from './tables/row.ts';
import { toolTable } from './tables/tools.ts';
import { makeWorld, type Run, type World } from './world.ts';

export interface DemoOptions {
  /** last day of the eighteen months, YYYY-MM-DD */
  anchor: string;
  seed: number;
  passwordHash: string;
}

function productionRow({ id }: World, { program, day, units, terminals }: Run): Row {
  const { plant, line, housing, terminal } = program;
  return {
    id: id(`production ${plant.code} ${line} ${housing.code} ${terminal.code}`, Date.parse(isoDay(day))),
    plant_id: id(`plant ${plant.code}`),
    day: isoDay(day),
    line_id: id(`line ${plant.code} ${line}`),
    housing_id: id(`housing ${housing.code}`),
    terminal_id: id(`terminal ${terminal.code}`),
    ...{ units, terminals },
  };
}

export interface Demo {
  /** in the order in which they can be loaded */
  tables: Table[];
  pictures: Picture[];
  world: World;
  filed: Filed[];
}

/** The whole demo. The same options always give the same rows. */
export function generateDemo({ anchor, seed, passwordHash }: DemoOptions): Demo {
  const world = makeWorld(seed, dayNumber(anchor));
  const rates = monthlyRates(world.dice('rates'), world.start, world.anchor);
  const faultsOf = faultMaker(world);
  const reportOf = reportMaker(world, rates);
  const forcesOf = forceMaker(world);
  const production: Row[] = [];
  const forces: Row[] = [];
  const reports: Report[] = [];
  for (const run of runs(world)) {
    if (run.day >= world.start && isReported(run, world.anchor)) production.push(productionRow(world, run));
    forces.push(...forcesOf(run));
    for (const fault of faultsOf(run)) {
      const report = reportOf(fault);
      if (report) reports.push(report);
    }
  }
  const filed = file(world, reports);
  const pictures = choosePictures(filed, world.anchor);
  const tables = [
    ...masterData(world),
    toolTable(world),
    ...peopleTables(world, passwordHash),
    ...moneyTables(world, rates),
    ...reportTables(world, filed, new Set(pictures.map(({ failureId }) => failureId))),
    { name: 'production', rows: production },
    { name: 'force_sample', rows: forces },
  ];
  return { tables, pictures, world, filed };
}

/** One checksum over every row and picture. */
export function checksumOf({ tables, pictures }: Demo): string {
  const hash = createHash('sha256');
  for (const table of tables) hash.update(table.name).update(copyText(table));
  for (const { failureId, svg } of pictures) hash.update(failureId).update(svg);
  return hash.digest('hex');
}
