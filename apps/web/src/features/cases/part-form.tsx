import { Alert, Button, Group, List, Stack, Text, Title } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Case } from '#contracts/cases.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './cases.module.css';
import { FieldInput } from './field-input.tsx';
import type { Clash } from './merge.ts';
import { partFields, valueAt, withValue } from './part-fields.ts';
import { TreeEditor } from './tree-editor.tsx';
import { useCaseTerms } from './use-case-terms.ts';
import { useDraft } from './use-draft.ts';

const trees = ['occurrence', 'non_detection', 'system'] as const;
type TreeName = (typeof trees)[number];
export type FormName = keyof typeof partFields | TreeName;
const isTree = (name: FormName): name is TreeName => trees.some((tree) => tree === name);

interface Props {
  of: Case;
  name: FormName;
  /** whether it may be changed now */
  open: boolean;
  refresh: () => Promise<Case>;
}

/** One part of a case, saved on its own. */
export const PartForm = ({ of, name, open, refresh }: Props) => {
  const { t } = useTranslation('cases');
  const terms = useCaseTerms();
  const format = useFormat();
  const { draft, setDraft, dirty, submit, clashes, pending, error } = useDraft(of, name, refresh);
  const { changedAt, changedBy } = of.parts[name];
  const title = terms.part[name];
  const values = draft as Record<string, unknown>;
  return (
    <form
      aria-label={title}
      className={classes.part}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <Title order={3}>{title}</Title>
      {clashes && <Joined clashes={clashes} />}
      <fieldset disabled={!open || pending} className={classes.fields}>
        <Stack gap="sm">
          {isTree(name) ? (
            <TreeEditor
              of={of}
              name={name}
              tree={draft as never}
              onChange={(tree) => setDraft(tree as never)}
              open={open}
            />
          ) : (
            partFields[name].map((field) => (
              <FieldInput
                key={field.name}
                field={field}
                value={valueAt(values, field.name)}
                onChange={(value) => setDraft(withValue(values, field.name, value) as never)}
                of={of}
              />
            ))
          )}
        </Stack>
      </fieldset>
      {error && <ProblemNote error={error} />}
      <Group className="no-print" mt="sm">
        {open && (
          <Button type="submit" loading={pending} disabled={!dirty} variant={dirty ? 'filled' : 'default'}>
            {t('savePart', { part: title })}
          </Button>
        )}
        {changedAt && (
          <Text size="sm" c="dimmed">
            {t('changed', { by: changedBy, at: format.instant(changedAt) })}
          </Text>
        )}
      </Group>
    </form>
  );
};

const shown = (value: unknown): string => (typeof value === 'string' ? value : JSON.stringify(value));

/** Says that somebody else saved meanwhile, and what both changed. */
const Joined = ({ clashes }: { clashes: readonly Clash[] }) => {
  const { t } = useTranslation('cases');
  return (
    <Alert role="alert" color="yellow.9" variant="outline" title={t('joined')} my="sm">
      <Text size="sm">{clashes.length > 0 ? t('joinedClashes') : t('joinedText')}</Text>
      <List size="sm">
        {clashes.map(({ path, theirs }) => (
          <List.Item key={path}>{t('theirs', { text: shown(theirs) })}</List.Item>
        ))}
      </List>
    </Alert>
  );
};
