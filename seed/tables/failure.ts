import { isoDay } from '../calendar.ts';
import { people } from '../group/people.ts';
import type { Report } from '../report/report.ts';
import type { World } from '../world.ts';
import { engineerOf, type Filed, plantOf } from './reports.ts';
import { instant, type Row } from './row.ts';

/** Inspectors report what the plant finds, engineers what comes back. */
function reporterOf({ finding }: Report, plant: string): string {
  const inside = finding.source === 'line' || finding.source === 'audit';
  const inspector = people.find((it) => it.plant === plant && it.role === 'inspector')!;
  return (inside ? inspector : engineerOf(plant)).email;
}

/** Suzhou's testers send their reports themselves, with a number of their own. */
const externalRef = ({ finding, moment }: Report, plant: string, running: number): string | null =>
  plant === 'SUZ' && finding.source === 'line' && (finding.found === 6 || finding.found === 8)
    ? `SZT-${new Date(moment.reportedAt).getUTCFullYear()}-${String(running).padStart(6, '0')}`
    : null;

export function failureRow({ id }: World, { report, id: failureId, number, running }: Filed): Row {
  const { run } = report.fault;
  const { plant, line, housing, terminal, wire } = run.program;
  const of = (kind: string, code: string | undefined | null) => (code ? id(`${kind} ${code}`) : null);
  const atPlant = (kind: string, code: string) => id(`${kind} ${plant.code} ${code}`);
  const [tool, ...otherTools] = report.tools.codes.map((code) => atPlant('tool', code));
  return {
    id: failureId,
    plant_id: id(`plant ${plantOf(report).code}`),
    number,
    external_ref: externalRef(report, plant.code, running),
    reported_at: instant(report.moment.reportedAt),
    reported_by: of('person', reporterOf(report, plant.code)),
    found_on: isoDay(report.day),
    found_at: instant(report.moment.foundAt),
    built_on: report.knows.built ? isoDay(run.day) : null,
    line_id: report.knows.line ? atPlant('line', line) : null,
    station: report.station,
    shift: report.moment.shift,
    stage_id: atPlant('stage', report.stageCode),
    found: report.finding.found,
    source: report.finding.source,
    housing_id: of('housing', report.knows.housing ? housing.code : null),
    terminal_id: of('terminal', report.knows.terminal ? terminal.code : null),
    wire_id: of('wire', report.knows.wire ? wire : null),
    tool_id: tool ?? null,
    other_tool_ids: otherTools,
    fixture_position: report.tools.fixturePosition,
    cavities: report.cavities,
    reel_lot: report.reelLot,
    housing_lot: report.housingLot,
    serial_from: report.serials?.[0] ?? null,
    serial_to: report.serials?.[1] ?? null,
    customer_id: of('customer', report.customer),
    customer_ref: report.customerRef,
    effect: report.effect,
    quantity_found: report.quantity,
    quantity_inspected: report.inspected,
    lock_state: report.lockState,
    disposition: report.disposition,
    safety: report.knows.housing && housing.safety,
    note: report.note,
    ...sortedColumns(report, of('person', engineerOf(plant.code).email)),
    ...costColumns(report),
    version: 1 + report.sortings.length + report.costs.length,
  };
}

function sortedColumns({ sortings }: Report, engineerId: string | null): Row {
  const last = sortings.at(-1);
  return {
    cause: last?.cause ?? null,
    sub_cause: last?.subCause ?? null,
    origin: last?.origin ?? null,
    proof: last?.proof ?? null,
    sorted_at: last ? instant(last.at) : null,
    sorted_by: last ? engineerId : null,
  };
}

function costColumns({ costs }: Report): Row {
  const sum = (basis: string) =>
    costs.filter((it) => it.basis === basis).reduce((total, { plantMinor }) => total + plantMinor, 0);
  return { cost_items: costs.length, booked_minor: sum('booked'), estimated_minor: sum('estimated') };
}
