import { Select } from '@mantine/core';
import type { Case } from '#contracts/cases.ts';
import type { Field } from './part-fields.ts';

const trees = { occurrence: 'occurrence', escape: 'non_detection', system: 'system' } as const;

interface Props {
  field: Field;
  label: string;
  value: string | null;
  onChange: (value: string | null) => void;
  of: Case;
}

/** An end of the tree that belongs to the field, as it was last saved. */
export const EndSelect = ({ field, label, value, onChange, of }: Props) => {
  const [key] = field.name.split('.');
  const { nodes } = of.parts[trees[key as keyof typeof trees]].content;
  const parents = new Set(nodes.map(({ parent }) => parent));
  const ends = nodes.filter(({ id, ruledOut }) => !parents.has(id) && !ruledOut);
  return (
    <Select
      label={label}
      value={value}
      onChange={onChange}
      data={ends.map(({ id, text }) => ({ value: id, label: text }))}
      clearable
    />
  );
};
