/** Every combination that could be a signal, with what its production or its equal share lets expect. Pure. */
import type { Made } from '#api/features/analyses/exposure.service.ts';
import { type Candidate, candidate } from './candidate.ts';
import type { Counted, CountedSet } from './counts.queries.ts';
import type { Master } from './master.queries.ts';
import type { Member } from './members.ts';
import { ofTools } from './of-tools.ts';
import type { CountedTool } from './tools.queries.ts';

export interface Facts {
  counted: Record<CountedSet, Counted[]>;
  tools: readonly CountedTool[];
  byHousing: readonly Made[];
  byTerminal: readonly Made[];
  master: Master;
  /** plants asked about */
  plants: readonly string[];
}

const sum = (rows: readonly { reports: number }[]) => rows.reduce((all, { reports }) => all + reports, 0);
const made = (rows: readonly { terminals: number }[]) => rows.reduce((all, { terminals }) => all + terminals, 0);

/** Plants against the rate of all of them. */
function ofPlants({ counted, byHousing, plants }: Facts): Candidate[] {
  if (plants.length < 2) return [];
  const reported = plants.filter((plant) => byHousing.some((row) => row.plant_id === plant));
  const reports = sum(counted.plant.filter((row) => reported.includes(row.plant_id!)));
  const rate = reports / (made(byHousing) || 1);
  return plants.map((plant) => {
    const observed = sum(counted.plant.filter((row) => row.plant_id === plant));
    const expected = rate * made(byHousing.filter((row) => row.plant_id === plant));
    return candidate('plant', { kind: 'plant', plant }, observed, expected, 'exposure', null);
  });
}

/** Parts of a plant against the plant's own rate; over several plants against what those rates let expect of it. */
function ofParts(kind: 'housing' | 'terminal', rows: readonly Counted[], all: readonly Made[], { plants }: Facts) {
  const idOf = (row: Counted) => (kind === 'housing' ? row.housing_id : row.terminal_id);
  const named = rows.filter((row) => idOf(row) !== null);
  const inserted = all.filter(({ key }) => key !== null);
  const reportsBy = Map.groupBy(named, (row) => row.plant_id!);
  const madeByPlant = Map.groupBy(inserted, (row) => row.plant_id);
  const own: Candidate[] = [];
  for (const plant of plants) {
    const built = madeByPlant.get(plant) ?? [];
    const reported = new Map((reportsBy.get(plant) ?? []).map((row) => [idOf(row)!, row.reports]));
    const produced = new Map(built.map((row) => [row.key!, row.terminals]));
    const known = [...reported].filter(([id]) => produced.has(id));
    const rate = known.reduce((total, [, reports]) => total + reports, 0) / (made(built) || 1);
    for (const id of new Set([...produced.keys(), ...reported.keys()]))
      own.push(
        candidate(
          kind,
          { kind, plant, [kind]: id },
          reported.get(id) ?? 0,
          rate * (produced.get(id) ?? 0),
          'exposure',
          null,
        ),
      );
  }
  if (plants.length < 2) return own;
  const across = [...Map.groupBy(own, ({ member }) => member[kind]!)].flatMap(([id, members]) => {
    if (members.length < 2) return [];
    const observed = members.reduce((total, one) => total + one.observed, 0);
    const expected = members.reduce((total, one) => total + one.expected, 0);
    return [candidate(`${kind} over plants`, { kind, plant: null, [kind]: id }, observed, expected, 'exposure', null)];
  });
  return [...own, ...across];
}

/** Members of each group against an equal share of what the group's reports name; `sizeOf` where silent members are known too. */
function shared(
  dimension: Member['kind'],
  rows: readonly Counted[],
  groupOf: (row: Counted) => string | null,
  memberOf: (row: Counted) => Member,
  sizeOf: (group: string) => number = () => 0,
): Candidate[] {
  const named = rows.filter((row) => groupOf(row) !== null);
  return [...Map.groupBy(named, (row) => groupOf(row)!)].flatMap(([group, members]) => {
    const peers = Math.max(sizeOf(group), members.length);
    const expected = peers < 2 ? 0 : sum(members) / peers;
    const silent = Array.from({ length: peers - members.length }, (_, place) => ({
      ...candidate(dimension, memberOf(members[0]!), 0, expected, 'share', peers),
      key: `${dimension}|${group}|silent ${place}`,
    }));
    return [
      ...members.map((row) => candidate(dimension, memberOf(row), row.reports, expected, 'share', peers)),
      ...silent,
    ];
  });
}

const fixtures = new Set(['test_fixture', 'test_probe']);

export function combinationsOf(facts: Facts): Candidate[] {
  const { counted, master, plants } = facts;
  const only = plants.length === 1 ? plants[0]! : null;
  const kindOf = (row: Counted) => (row.tool_id === null ? null : (master.tools.get(row.tool_id)?.kind ?? null));
  return [
    ...ofPlants(facts),
    ...ofParts('housing', counted.housing, facts.byHousing, facts),
    ...ofParts('terminal', counted.terminal, facts.byTerminal, facts),
    ...ofTools(facts.tools, facts.byTerminal, master),
    ...shared(
      'lot',
      counted.lot,
      (row) => row.reel_lot && row.of_part,
      (row) => ({ kind: 'lot', plant: only, lot: row.reel_lot! }),
    ),
    ...shared(
      'housingLot',
      counted.housingLot,
      (row) => row.housing_lot && row.of_part,
      (row) => ({ kind: 'housingLot', plant: only, housingLot: row.housing_lot! }),
    ),
    ...shared(
      'fixturePosition',
      counted.fixturePosition.filter((row) => row.fixture_position !== null && fixtures.has(kindOf(row) ?? '')),
      (row) => `${row.plant_id} ${row.tool_id}`,
      (row) => ({
        kind: 'fixturePosition',
        plant: row.plant_id!,
        tool: row.tool_id!,
        fixturePosition: row.fixture_position!,
      }),
    ),
    ...shared(
      'cavity',
      counted.cavity.filter((row) => row.cavity !== null && row.cavity !== 'several'),
      (row) => row.housing_id,
      (row) => ({ kind: 'cavity', plant: only, housing: row.housing_id!, cavity: row.cavity! }),
      (housing) => master.housings.get(housing)?.cavities ?? 0,
    ),
  ];
}
