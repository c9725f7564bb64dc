/** What is combined in a signal: a part, tool, lot … of one plant, or over several. */
import type { SignalKind } from '#contracts/signals.ts';

export const parts = ['housing', 'terminal', 'tool', 'lot', 'housingLot', 'fixturePosition', 'cavity'] as const;
export type Part = (typeof parts)[number];

/** Ids of master data, words of marks; `plant` null: over all plants asked about. */
export type Member = { kind: SignalKind; plant: string | null } & Partial<Record<Part, string>>;

export const keyOf = (member: Member): string =>
  [member.kind, member.plant ?? 'plants', ...parts.flatMap((part) => member[part] ?? [])].join('|');

/** The filter fields that open its reports, beside the filter asked with. */
export const opensOf = (member: Member): Record<string, string[]> =>
  Object.fromEntries([
    ...(member.plant ? [['plant', [member.plant]]] : []),
    ...parts.flatMap((part) => (member[part] === undefined ? [] : [[part, [member[part]]]])),
  ]);

/** Whether a report, given by what it names, belongs to the member. */
export const holds = (member: Member, report: Readonly<Record<Part | 'plant', string | null>>): boolean =>
  (member.plant === null || member.plant === report.plant) &&
  parts.every((part) => member[part] === undefined || member[part] === report[part]);
