/** What each part asks for, in the order of the form. Labels are words of the case's own vocabulary. */
import { documentKinds, isIsNotAspects, type PartName, teamRoles, treeNames } from '#contracts/case-parts.ts';
import type { CaseTerms } from '#contracts/case-terms.en.ts';
import { causes, stages } from '#contracts/taxonomy.ts';

type Label = keyof CaseTerms['document'];
export type Words = 'teamRole' | 'aspect' | 'against' | 'documentKind' | 'stage' | 'cause';
export type Field =
  | { name: string; label: Label; type: 'text' | 'line' | 'day' }
  | { name: string; label: Label; type: 'choice'; words: Words; options: readonly string[]; optional?: boolean }
  | { name: string; label: Label; type: 'decision' | 'end' }
  | { name: string; label: Label; type: 'housings' | 'terminals' | 'tags' }
  | { name: string; label: Label; type: 'rows'; fields: readonly Field[]; blank: Readonly<Record<string, unknown>> };

const text = (name: string, label: Label): Field => ({ name, label, type: 'text' });
const line = (name: string, label: Label): Field => ({ name, label, type: 'line' });
const day = (name: string, label: Label): Field => ({ name, label, type: 'day' });
const stage = (name: string, label: Label): Field => ({
  name,
  label,
  type: 'choice',
  words: 'stage',
  options: stages,
  optional: true,
});

export const partFields: Record<
  Exclude<PartName, 'occurrence' | 'non_detection' | 'system' | 'document'>,
  readonly Field[]
> = {
  plan: [text('symptom', 'symptom'), text('emergency', 'emergency'), text('why', 'why')],
  team: [
    {
      ...{ name: 'members', label: 'name', type: 'rows', blank: { name: '', role: 'member', company: null } },
      fields: [
        line('name', 'name'),
        { name: 'role', label: 'role', type: 'choice', words: 'teamRole', options: teamRoles },
        line('company', 'company'),
      ],
    },
  ],
  problem: [
    text('statement', 'statement'),
    {
      ...{ name: 'rows', label: 'aspect', type: 'rows' },
      blank: { aspect: 'what', is: '', isNot: '', difference: '', change: '' },
      fields: [
        { name: 'aspect', label: 'aspect', type: 'choice', words: 'aspect', options: isIsNotAspects },
        ...[text('is', 'is'), text('isNot', 'isNot'), text('difference', 'difference'), text('change', 'change')],
      ],
    },
  ],
  timeline: [
    {
      ...{ name: 'events', label: 'timeline', type: 'rows', blank: { on: '', text: '' } },
      fields: [day('on', 'date'), line('text', 'event')],
    },
  ],
  containment: [
    text('summary', 'containment'),
    text('verification', 'verification'),
    day('cleanPoint', 'cleanPoint'),
    line('cleanMark', 'cleanMark'),
    text('notNeeded', 'notNeeded'),
  ],
  root_cause: [
    { name: 'occurrence.nodeId', label: 'rootCauseEnd', type: 'end' },
    text('occurrence.statement', 'rootCause'),
    { name: 'occurrence.cause', label: 'cause', type: 'choice', words: 'cause', options: causes, optional: true },
    stage('occurrence.origin', 'origin'),
    { name: 'escape.nodeId', label: 'escapePointEnd', type: 'end' },
    text('escape.statement', 'escapePoint'),
    stage('escape.stage', 'stage'),
    { name: 'system.nodeId', label: 'systemCauseEnd', type: 'end' },
    text('system.statement', 'systemCause'),
    text('verification', 'verification'),
  ],
  corrections: [
    {
      ...{ name: 'options', label: 'correction', type: 'rows' },
      blank: { against: 'occurrence', text: '', chosen: null, reason: '' },
      fields: [
        { name: 'against', label: 'cause', type: 'choice', words: 'against', options: treeNames },
        text('text', 'correction'),
        { name: 'chosen', label: 'decision', type: 'decision' },
        text('reason', 'reason'),
      ],
    },
  ],
  validation: [
    text('summary', 'verification'),
    day('effectiveFrom', 'effectiveFrom'),
    text('withoutVerdict', 'withoutVerdict'),
  ],
  prevention: [
    text('systems', 'prevention'),
    {
      ...{ name: 'documents', label: 'documents', type: 'rows' },
      blank: { kind: 'control_plan', name: '', revision: '', changedOn: null },
      fields: [
        { name: 'kind', label: 'kind', type: 'choice', words: 'documentKind', options: documentKinds },
        ...[line('name', 'name'), line('revision', 'revision'), day('changedOn', 'changedOn')],
      ],
    },
    text('noDocuments', 'notNeeded'),
  ],
  reach: [
    { name: 'toolTypes', label: 'toolTypes', type: 'tags' },
    { name: 'housingIds', label: 'housings', type: 'housings' },
    { name: 'terminalIds', label: 'terminals', type: 'terminals' },
    line('practice', 'practice'),
    text('notNeeded', 'notNeeded'),
  ],
  lesson: [
    line('title', 'lessonTitle'),
    text('problem', 'lessonProblem'),
    text('rootCause', 'rootCause'),
    text('check', 'check'),
    text('notNeeded', 'notNeeded'),
  ],
  closure: [text('summary', 'closing'), text('thanks', 'thanks')],
};

type Values = Record<string, unknown>;
export const valueAt = (content: Values, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Values | undefined)?.[key], content);
export function withValue(content: Values, path: string, value: unknown): Values {
  const [key = '', ...rest] = path.split('.');
  return {
    ...content,
    [key]: rest.length > 0 ? withValue((content[key] ?? {}) as Values, rest.join('.'), value) : value,
  };
}
/** Free texts that hold null while there is nothing to say. */
export const nullable = new Set([
  'notNeeded',
  'noDocuments',
  'withoutVerdict',
  'company',
  'cleanPoint',
  'effectiveFrom',
  'changedOn',
]);
