/** What each analysis asks of the database, said once more in DuckDB's SQL. `of` is [from, to) of a period. */
import { previousPeriod } from '#analysis/calendar/period.ts';

interface Period {
  from: string;
  to: string;
}
export interface Question {
  name: string;
  path: string;
  sql: (now: Period) => string[];
}

const sums = `plant_id, count(*), sum(terminals), sum(terminals * terminals), max(terminals), sum(booked_minor), sum(estimate_minor),
  count(*) filter (where not costed)`;
const spread = ', sum((booked_minor + estimate_minor)::double ^ 2), max(booked_minor + estimate_minor)';
const found = ({ from, to }: Period) => `found_on >= '${from}' and found_on < '${to}'`;
const made = ({ from, to }: Period) => `day >= '${from}' and day < '${to}'`;
const both = (now: Period) => [now, previousPeriod(now)];

const pareto =
  (column: string, extra = '') =>
  (now: Period) =>
    both(now).map(
      (of) => `select ${column}, ${sums}${extra} from failure_fact where ${found(of)} group by ${column}, plant_id`,
    );
const allProduction = (now: Period) =>
  both(now).map((of) => `select sum(units), sum(terminals) from production_fact where ${made(of)}`);
const productionBy = (column: string) => (now: Period) =>
  both(now).map(
    (of) => `select ${column}, sum(units), sum(terminals) from production_fact where ${made(of)} group by 1`,
  );

const outside = (where: string) =>
  `select plant_id, date_trunc('month', built_on), date_trunc('month', found_on), count(*) from failure_fact
    where ${where} and built_on is not null group by 1, 2, 3`;

const year = (today: string) => `from=${String(Number(today.slice(0, 4)) - 1)}${today.slice(4)}&to=${today}`;

export const questionsOf = (today: string, plant: string): Question[] => [
  {
    name: 'Pareto by cause, 13 weeks',
    path: '/api/v1/analyses/pareto',
    sql: (now) => [...pareto('cause')(now), ...allProduction(now)],
  },
  {
    name: 'Pareto by housing by cost, 12 months',
    path: `/api/v1/analyses/pareto?dimension=housing&measure=withEstimates&${year(today)}`,
    sql: (now) => [...pareto('housing_id', spread)(now), ...productionBy('housing_id')(now)],
  },
  {
    name: 'Pareto by tool, one plant, 12 months',
    path: `/api/v1/analyses/pareto?dimension=tool&plant=${plant}&${year(today)}`,
    sql: (now) =>
      [...pareto('tool_id')(now), ...allProduction(now)].map((text) =>
        text.replace(' where ', ` where plant_id = '${plant}' and `),
      ),
  },
  {
    name: 'Pareto by cause, scrapped only, 13 weeks',
    path: '/api/v1/analyses/pareto?disposition=scrapped',
    sql: (now) => [
      ...pareto('cause')(now).map((text) => text.replace(' where ', ` where disposition = 'scrapped' and `)),
      ...allProduction(now),
    ],
  },
  {
    name: 'Rates by week, 12 months',
    path: `/api/v1/analyses/rates?${year(today)}`,
    sql: (now) => [
      `select date_trunc('week', found_on), ${sums} from failure_fact where ${found(now)} group by 1, plant_id`,
      `select date_trunc('week', day), plant_id, sum(units), sum(terminals) from production_fact where ${made(now)} group by 1, 2`,
    ],
  },
  {
    name: 'Rates by week, one plant, 12 months',
    path: `/api/v1/analyses/rates?plant=${plant}&${year(today)}`,
    sql: (now) => [
      `select date_trunc('week', found_on), ${sums} from failure_fact where plant_id = '${plant}' and ${found(now)} group by 1, plant_id`,
      `select date_trunc('week', day), plant_id, sum(units), sum(terminals) from production_fact where plant_id = '${plant}' and ${made(now)} group by 1, 2`,
    ],
  },
  {
    name: 'Escape matrix, 12 months',
    path: `/api/v1/analyses/escapes?${year(today)}`,
    sql: (now) => [
      `select origin, found, coalesce(gates_passed >= 2, false), ${sums} from failure_fact where ${found(now)} group by 1, 2, 3, plant_id`,
    ],
  },
  {
    name: 'Gates, 12 months',
    path: `/api/v1/analyses/gates?${year(today)}`,
    sql: (now) => [
      `select origin, found, coalesce(gates_passed >= 2, false), ${sums} from failure_fact where ${found(now)} group by 1, 2, 3, plant_id`,
      `select origin, count(*) filter (where built_on >= '${now.from}' and built_on < '${now.to}'), count(*) filter (where built_on is null)
        from failure_fact where found = 10 group by 1`,
      outside('found = 10'),
      `select date_trunc('month', day), plant_id, sum(units) from production_fact where ${made(now)} group by 1, 2`,
    ],
  },
  {
    name: 'Field maturity, 24 build months',
    path: '/api/v1/analyses/maturity',
    sql: (now) => [
      outside("source in ('customer', 'field')"),
      `select plant_id, date_trunc('month', built_on), (found_on - built_on) // 7, count(*) from failure_fact
        where source in ('customer', 'field') and built_on is not null group by 1, 2, 3`,
      `select plant_id, count(*) from failure_fact where source in ('customer', 'field') and built_on is null group by 1`,
      `select date_trunc('month', day), plant_id, sum(units) from production_fact where ${made(now)} group by 1, 2`,
    ],
  },
  {
    name: 'Cost of escape, 12 months',
    path: `/api/v1/analyses/costs?${year(today)}`,
    sql: (now) => [
      `select found, ${sums}, sum(estimate_minor) filter (where standard_only), count(*) filter (where booked_minor > 0),
        sum(ln(nullif(booked_minor, 0)::double / terminals)) filter (where booked_minor > 0),
        sum(ln(nullif(booked_minor, 0)::double / terminals) ^ 2) filter (where booked_minor > 0), count(*) filter (where gate < found),
        sum(booked_minor + estimate_minor - gate_minor) filter (where gate < found and costed),
        count(*) filter (where cause is null or cause = 'undetermined'), count(*) filter (where cause <> 'undetermined' and origin is null),
        count(*) filter (where gate < found and not costed), count(*) filter (where gate < found and costed and gate_minor is null)
        from failure_fact where ${found(now)} group by found, plant_id`,
      `select c.plant_id, c.category, sum(c.plant_minor) filter (where c.basis = 'booked'), sum(c.plant_minor) filter (where c.basis = 'estimated')
        from failure_fact f join cost_fact c on c.failure_id = f.id where ${found(now)} group by 1, 2`,
    ],
  },
  {
    name: 'Control chart of a cause, 12 months',
    path: '/api/v1/analyses/charts?cause=tooling',
    sql: (now) => [
      `select date_trunc('week', found_on), count(*) from failure_fact where cause = 'tooling' and ${found(now)} group by 1, plant_id`,
      `select date_trunc('week', day), plant_id, sum(terminals) from production_fact where ${made(now)} group by 1, 2`,
      `select distinct tool_id from failure_fact where cause = 'tooling' and ${found(now)}`,
      `select reel_lot, min(found_on) from failure_fact where cause = 'tooling' and ${found(now)} group by 1`,
      `select housing_lot, min(found_on) from failure_fact where cause = 'tooling' and ${found(now)} group by 1`,
    ],
  },
  {
    name: 'Signals, all plants, 13 weeks',
    path: '/api/v1/analyses/signals',
    sql: (now) => [
      ...[
        'plant_id',
        'plant_id, housing_id',
        'plant_id, terminal_id',
        'plant_id, tool_id, terminal_id',
        'reel_lot',
        'housing_lot',
        'housing_id, cavity',
      ].map((columns) => `select ${columns}, count(*) from failure_fact where ${found(now)} group by ${columns}`),
      ...['housing_id', 'terminal_id'].map(
        (column) => `select plant_id, ${column}, sum(terminals) from production_fact where ${made(now)} group by 1, 2`,
      ),
      ...both(now).map(
        (of) =>
          `select date_trunc('week', found_on), plant_id, tool_id, housing_id, count(*) from failure_fact where ${found(of)} group by 1, 2, 3, 4`,
      ),
    ],
  },
  {
    name: 'The week, all plants',
    path: '/api/v1/week',
    sql: (now) => [
      ...pareto('cause')(now),
      ...allProduction(now),
      ...both(now).map(
        (
          of,
        ) => `select ${sums}, sum(booked_minor::double ^ 2), max(booked_minor), sum(estimate_minor::double ^ 2), max(estimate_minor),
          count(*) filter (where gates_passed >= 2), count(*) filter (where source in ('customer', 'field')), count(*) filter (where cause is null),
          count(*) filter (where origin is null), count(*) filter (where not evidence) from failure_fact where ${found(of)} group by plant_id`,
      ),
      `select id, number, plant_id, cause, origin, found, gates_passed, terminals, booked_minor, estimate_minor from failure_fact
        where ${found(now)} and booked_minor + estimate_minor > 0 and (origin < found or source in ('customer', 'field'))
        order by booked_minor + estimate_minor desc limit 8`,
      `select count(*) filter (where safety and cause is null), count(*) filter (where source in ('customer', 'field') and cause is null),
        count(*) filter (where booked_minor <> 0 and cause is null), count(*) filter (where disposition = 'pending') from failure_fact where found_on < '${now.to}'`,
      `select count(*), count(*) filter (where not exists (select 1 from production_fact p where p.plant_id = d.plant_id and p.day = d.found_on))
        from (select distinct plant_id, found_on from failure_fact where ${found(now)}) d`,
    ],
  },
];
