/** What must be said to make master data while importing; the rest is completed on the master data pages. */
import type { Reference } from '#contracts/import-fields.ts';
import { masterData } from '#contracts/master-data.ts';
import type { Permission } from '#contracts/permissions.ts';
import { retentionStyles, secondaryLockKinds, stages, toolKinds } from '#contracts/taxonomy.ts';
import type { Terms } from '#contracts/terms.en.ts';
import type { NamedResource } from '#web/ui/lookup.ts';
import type { messages } from './messages.en.ts';

export interface NewField {
  name: keyof typeof messages.newField;
  type: 'text' | 'number' | 'choice';
  words?: readonly string[];
  terms?: keyof Terms;
}
interface NewForm {
  permission: Permission;
  input: (typeof masterData)[keyof typeof masterData]['Input'];
  fields: readonly NewField[];
}

const choice = (name: NewField['name'], words: readonly string[], terms: keyof Terms): NewField => ({
  name,
  type: 'choice',
  words,
  terms,
});
const number = (name: NewField['name']): NewField => ({ name, type: 'number' });

export const newForms: Record<Reference, NewForm> = {
  plant: {
    permission: 'groupData.write',
    input: masterData.plants.Input,
    fields: [
      { name: 'zone', type: 'text' },
      { name: 'currency', type: 'text' },
    ],
  },
  line: { permission: 'plantData.write', input: masterData.lines.Input, fields: [] },
  stage: {
    permission: 'plantData.write',
    input: masterData.stages.Input,
    fields: [choice('common', stages, 'stage'), number('position')],
  },
  housing: {
    permission: 'groupData.write',
    input: masterData.housings.Input,
    fields: [
      number('rows'),
      number('columns'),
      choice('retentionStyle', retentionStyles, 'retentionStyle'),
      choice('secondaryLock', secondaryLockKinds, 'secondaryLockKind'),
    ],
  },
  terminal: {
    permission: 'groupData.write',
    input: masterData.terminals.Input,
    fields: [number('wireMinMm2'), number('wireMaxMm2')],
  },
  wire: { permission: 'groupData.write', input: masterData.wires.Input, fields: [number('sectionMm2')] },
  tool: {
    permission: 'plantData.write',
    input: masterData.tools.Input,
    fields: [choice('kind', toolKinds, 'toolKind')],
  },
  customer: { permission: 'groupData.write', input: masterData.customers.Input, fields: [] },
};

export const resources: Record<Reference, NamedResource> = {
  plant: 'plants',
  line: 'lines',
  stage: 'stages',
  housing: 'housings',
  terminal: 'terminals',
  wire: 'wires',
  tool: 'tools',
  customer: 'customers',
};
