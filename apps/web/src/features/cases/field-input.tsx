import { Select, TagsInput, Textarea, TextInput } from '@mantine/core';
import type { Case } from '#contracts/cases.ts';
import { useTerms } from '#web/ui/language.ts';
import { RowsSelect } from '#web/ui/rows-select.tsx';
import { EndSelect } from './end-select.tsx';
import { type Field, nullable } from './part-fields.ts';
import { RowsEditor } from './rows-editor.tsx';
import { useCaseTerms } from './use-case-terms.ts';

export interface InputProps {
  field: Field;
  value: unknown;
  onChange: (value: unknown) => void;
  of: Case;
}

/** The input that fits the field. */
export const FieldInput = ({ field, value, onChange, of }: InputProps) => {
  const terms = useCaseTerms();
  const trade = useTerms();
  const label = terms.document[field.label];
  const written = (text: string) => onChange(text === '' && nullable.has(field.name) ? null : text);
  const common = { label, value: (value ?? '') as string };
  switch (field.type) {
    case 'text':
      return (
        <Textarea {...common} autosize minRows={2} maxRows={14} onChange={(event) => written(event.target.value)} />
      );
    case 'line':
      return <TextInput {...common} autoComplete="off" onChange={(event) => written(event.target.value)} />;
    case 'day':
      return <TextInput {...common} type="date" onChange={(event) => written(event.target.value)} />;
    case 'choice': {
      const words: Readonly<Record<string, string>> =
        field.words === 'stage' || field.words === 'cause' ? trade[field.words] : terms[field.words];
      return (
        <Select
          label={label}
          value={(value as string | null) ?? null}
          onChange={onChange}
          data={field.options.map((option) => ({ value: option, label: words[option] ?? option }))}
          allowDeselect={field.optional ?? false}
        />
      );
    }
    case 'decision':
      return (
        <Select
          label={label}
          value={value === null || value === undefined ? 'undecided' : value ? 'chosen' : 'rejected'}
          onChange={(choice) => onChange(choice === 'undecided' ? null : choice === 'chosen')}
          data={(['undecided', 'chosen', 'rejected'] as const).map((it) => ({ value: it, label: terms.document[it] }))}
          allowDeselect={false}
        />
      );
    case 'end':
      return <EndSelect field={field} label={label} value={value as string | null} onChange={onChange} of={of} />;
    case 'tags':
      return <TagsInput label={label} value={value as string[]} onChange={onChange} clearable={false} />;
    case 'housings':
    case 'terminals':
      return <RowsSelect resource={field.type} label={label} value={value as string[]} onChange={onChange} />;
    case 'rows':
      return <RowsEditor field={field} value={(value ?? []) as never} onChange={onChange} of={of} />;
  }
};
