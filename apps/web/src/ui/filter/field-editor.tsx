/** The small form behind one filter part. Nothing changes until it is applied. */
import { Button, Checkbox, NumberInput, Radio, Stack, TagsInput, TextInput } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { useTerms } from '#web/ui/language.ts';
import { RowsSelect } from '#web/ui/rows-select.tsx';
import { type FieldName, fields } from './fields.ts';
import classes from './filter-bar.module.css';
import { type FilterValues, useFilter } from './use-filter.ts';

interface PartProps<Value> {
  name: FieldName;
  value: Value;
  onChange: (value: Value) => void;
}

export const FieldEditor = ({ name, onDone }: { name: FieldName; onDone: () => void }) => {
  const { t } = useTranslation('ui');
  const [filter, change] = useFilter();
  const [draft, setDraft] = useState<FilterValues[FieldName]>(filter[name] ?? (name === 'gates' ? 2 : undefined));
  const empty = draft === undefined || draft === '' || (Array.isArray(draft) && draft.length === 0);
  const list = Array.isArray(draft) ? draft.map(String) : [];
  const setList = (items: string[]) => setDraft(items as FilterValues['station']);
  const kind = fields[name].kind;
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector('input')?.focus(), []);

  return (
    <form
      ref={form}
      onSubmit={(event) => {
        event.preventDefault();
        change({ [name]: empty ? undefined : draft });
        onDone();
      }}
    >
      <Stack gap="sm" miw="16rem" maw="24rem">
        {kind === 'words' && <Words name={name} value={list} onChange={setList} />}
        {kind === 'rows' && <Rows name={name} value={list} onChange={setList} />}
        {kind === 'marks' && (
          <TagsInput
            label={t(`filter.field.${name}`)}
            description={t('filter.marksHelp')}
            value={list.filter((item) => item !== 'none')}
            onChange={setList}
            acceptValueOnBlur
          />
        )}
        {(kind === 'marks' || kind === 'rows') && (
          <Checkbox
            label={t('filter.none')}
            checked={list.includes('none')}
            onChange={(event) => setList(event.currentTarget.checked ? ['none'] : [])}
          />
        )}
        {(kind === 'flag' || kind === 'cost') && (
          <Choice
            name={name}
            value={draft === undefined ? '' : String(draft)}
            onChange={(word) => setDraft(kind === 'flag' ? word === 'true' : (word as 'booked'))}
          />
        )}
        {kind === 'gates' && (
          <NumberInput
            label={t('filter.field.gates')}
            min={1}
            max={9}
            value={typeof draft === 'number' ? draft : 2}
            onChange={(value) => setDraft(Number(value))}
          />
        )}
        {kind === 'text' && (
          <TextInput
            label={t('filter.field.q')}
            value={typeof draft === 'string' ? draft : ''}
            onChange={(event) => setDraft(event.currentTarget.value)}
          />
        )}
        <Button type="submit">{t('filter.apply')}</Button>
      </Stack>
    </form>
  );
};

const Words = ({ name, value, onChange }: PartProps<string[]>) => {
  const { t } = useTranslation('ui');
  const terms = useTerms();
  const field = fields[name];
  if (field.kind !== 'words') return null;
  const labels = terms[field.labels] as Record<string, string>;
  return (
    <Checkbox.Group value={value} onChange={onChange} label={t(`filter.field.${name}`)}>
      <div className={classes.options}>
        {field.words.map((word) => (
          <Checkbox key={word} value={word} label={labels[word]} />
        ))}
        {field.orNone && <Checkbox value="none" label={t('filter.none')} />}
      </div>
    </Checkbox.Group>
  );
};

const Rows = ({ name, value, onChange }: PartProps<string[]>) => {
  const { t } = useTranslation('ui');
  const [{ plant }] = useFilter();
  const field = fields[name];
  if (field.kind !== 'rows') return null;
  return (
    <RowsSelect
      resource={field.resource}
      label={t(`filter.field.${name}`)}
      plant={plant}
      value={value.filter((id) => id !== 'none')}
      onChange={onChange}
    />
  );
};

const Choice = ({ name, value, onChange }: PartProps<string>) => {
  const { t } = useTranslation('ui');
  return (
    <Radio.Group label={t(`filter.field.${name}`)} value={value} onChange={onChange}>
      <Stack gap="xs" mt="xs">
        {name === 'cost' ? (
          (['booked', 'estimated', 'none'] as const).map((word) => (
            <Radio key={word} value={word} label={t(`filter.costs.${word}`)} />
          ))
        ) : (
          <>
            <Radio value="true" label={t('filter.yes')} />
            <Radio value="false" label={t('filter.no')} />
          </>
        )}
      </Stack>
    </Radio.Group>
  );
};
