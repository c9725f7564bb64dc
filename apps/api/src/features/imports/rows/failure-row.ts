import { DateTime } from 'luxon';
import { type Cause, causeTaxonomy, type Stage, stageNumber } from '#contracts/taxonomy.ts';
import { wordOf } from '../interpret/words.ts';
import type { CopyValue } from './copy-text.ts';
import { readCosts, type WayOf } from './costs.ts';
import { readFindings } from './findings.ts';
import type { RowValues } from './row-values.ts';

/** Columns of the staging table of failure reports after `line`, in the order that `readFailure` gives them. */
export const failureColumns = [
  ['plant_id', 'uuid'],
  ['external_ref', 'text'],
  ['found_on', 'date'],
  ['found_local', 'timestamp'],
  ['found_instant', 'timestamptz'],
  ['built_on', 'date'],
  ['line_id', 'uuid'],
  ['station', 'text'],
  ['shift', 'text'],
  ['stage_id', 'uuid'],
  ['found', 'smallint'],
  ['source', 'source'],
  ['housing_id', 'uuid'],
  ['terminal_id', 'uuid'],
  ['wire_id', 'uuid'],
  ['tool_id', 'uuid'],
  ['other_tool_ids', 'uuid[]'],
  ['fixture_position', 'text'],
  ['cavities', 'text[]'],
  ['reel_lot', 'text'],
  ['housing_lot', 'text'],
  ['serial_from', 'text'],
  ['serial_to', 'text'],
  ['customer_id', 'uuid'],
  ['customer_ref', 'text'],
  ['effect', 'effect'],
  ['quantity_found', 'int'],
  ['quantity_inspected', 'int'],
  ['lock_state', 'lock_state'],
  ['disposition', 'disposition'],
  ['safety_stated', 'boolean'],
  ['note', 'text'],
  ['cause', 'cause'],
  ['sub_cause', 'text'],
  ['origin', 'smallint'],
  ['proof', 'text'],
  ['findings', 'jsonb'],
  ['cost_categories', 'cost_category[]'],
  ['cost_minor', 'bigint[]'],
  ['cost_currency', 'text'],
  ['cost_basis', 'cost_basis'],
  ['safety_by_housing', 'boolean'],
  ['cost_plant_minor', 'bigint[]'],
  ['cost_rate_on', 'date'],
] as const;

/** The last columns follow from master data and rates; they are no part of what the sender says. */
export const derivedFailureColumns = 3;

export interface FailureContext {
  wayOf: WayOf;
  /** The present day at each plant, `YYYY-MM-DD`. */
  today: ReadonlyMap<string, string>;
}

/** One row of the file as a row of the staging table; null where it is refused (the faults are in `row`). */
export function readFailure(row: RowValues, { wayOf, today }: FailureContext): CopyValue[] | null {
  const plant = row.reference('plant', null);
  const foundText = row.value('foundOn');
  if (!plant || foundText === null) return null;
  const plantId = plant.id;
  const { day: foundOn, local, instant } = placeInTime(foundText, plant.zone!);
  if (foundOn > today.get(plantId)!) row.refuse('foundOn', 'in_future');
  const builtOn = row.value('builtOn')?.slice(0, 10) ?? null;
  if (builtOn !== null && builtOn > foundOn) row.refuse('builtOn', 'built_after_found');
  const line = row.reference('line', plantId);
  const { stageId, found } = readStage(row, plantId);
  const housing = row.reference('housing', null);
  const [toolId = null, ...otherTools] = row.references('tools', plantId);
  const quantityFound = row.value('quantityFound');
  const inspected = row.value('quantityInspected');
  if (inspected !== null && quantityFound !== null && Number(inspected) < Number(quantityFound))
    row.refuse('quantityInspected', 'found_above_inspected');
  const sorting = readSorting(row, found);
  const costs = readCosts(row, plant.currency!, foundOn, wayOf);
  const values: CopyValue[] = [
    plantId,
    row.value('externalRef'),
    foundOn,
    local,
    instant,
    builtOn,
    line?.id ?? null,
    row.value('station'),
    row.value('shift'),
    stageId,
    found,
    row.value('source'),
    housing?.id ?? null,
    row.reference('terminal', null)?.id ?? null,
    row.reference('wire', null)?.id ?? null,
    toolId,
    otherTools,
    row.value('fixturePosition'),
    row.parts('cavities'),
    row.value('reelLot'),
    row.value('housingLot'),
    row.value('serialFrom'),
    row.value('serialTo'),
    row.reference('customer', null)?.id ?? null,
    row.value('customerRef'),
    row.value('effect'),
    quantityFound,
    inspected,
    row.value('lockState'),
    row.value('disposition'),
    row.value('safety'),
    row.value('note'),
    sorting.cause,
    sorting.subCause,
    sorting.origin,
    row.value('proof'),
    findingsOf(row),
    costs.categories,
    costs.minor,
    costs.currency,
    costs.basis,
    Boolean(housing?.safety),
    costs.plantMinor,
    costs.rateOn,
  ];
  return row.faults.length > 0 ? null : values;
}

/** Findings as JSON for the database; null where the file says nothing, or says it wrongly. */
function findingsOf(row: RowValues): string | null {
  const text = row.value('findings');
  const findings = text === null ? null : readFindings(text);
  if (typeof findings === 'string') return row.refuse('findings', 'not_a_finding');
  return findings && JSON.stringify(findings);
}

/** A time with an offset is placed on the plant's calendar; one without is the plant's own. */
function placeInTime(text: string, zone: string): { day: string; local: string | null; instant: string | null } {
  if (text.length === 10) return { day: text, local: null, instant: null };
  if (text.length === 19) return { day: text.slice(0, 10), local: text, instant: null };
  return { day: DateTime.fromISO(text, { zone }).toISODate()!, local: null, instant: text };
}

/** The plant's own stage by its code or name, else the common stage that the word stands for. */
function readStage(row: RowValues, plantId: string): { stageId: string | null; found: number | null } {
  const text = row.text('stage');
  const stage = text === '' ? row.reference('stage', plantId) : row.known('stage', 'stage', plantId);
  if (stage) return { stageId: stage.id, found: stage.common };
  const word = text === '' ? null : (wordOf('origin', text) as Stage | null);
  if (word) return { stageId: null, found: stageNumber(word) };
  if (stage === null) row.refuse('stage', 'missing');
  else if (text !== '') row.unknown('stage', plantId);
  return { stageId: null, found: null };
}

function readSorting(
  row: RowValues,
  found: number | null,
): { cause: string | null; subCause: string | null; origin: number | null } {
  const subCause = row.value('subCause');
  const cause = row.value('cause') ?? causeOf(subCause);
  if (cause !== null && subCause !== null && !causeTaxonomy[cause as Cause].subCauses.includes(subCause))
    row.refuse('subCause', 'sub_cause_unfit');
  const originWord = row.value('origin') as Stage | null;
  const origin = originWord && stageNumber(originWord);
  if (origin !== null && found !== null && origin > found) row.refuse('origin', 'origin_after_found');
  return { cause, subCause, origin };
}

const causeBySubCause = new Map(
  Object.entries(causeTaxonomy).flatMap(([cause, { subCauses }]) =>
    subCauses.map((subCause) => [subCause, cause] as const),
  ),
);
const causeOf = (subCause: string | null): string | null =>
  subCause === null ? null : (causeBySubCause.get(subCause) ?? null);
