import {
  Alert,
  Anchor,
  Button,
  Checkbox,
  Group,
  List,
  Select,
  Stack,
  Switch,
  Text,
  TextInput,
  Title,
} from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type DocumentChoice, disciplines } from '#contracts/case-parts.ts';
import { type Case, previewDocument, readKeptDocument } from '#contracts/cases.ts';
import { papers } from '#contracts/shared/scalars.ts';
import { addressOf } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { languageNames } from '#web/ui/language-names.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './cases.module.css';
import { checkQuery, useKeep } from './queries.ts';
import { useCaseTerms } from './use-case-terms.ts';
import { useDraft } from './use-draft.ts';

interface Props {
  it: Case;
  mayWrite: boolean;
  refresh: () => Promise<Case>;
}

/** What goes out to the customer: chosen, looked at, kept as it was sent. */
export const DocumentPanel = ({ it, mayWrite, refresh }: Props) => {
  const { t } = useTranslation('cases');
  const { draft, setDraft, dirty, submit, pending, error } = useDraft(it, 'document', refresh);
  const change = (more: Partial<DocumentChoice>) => setDraft({ ...draft, ...more });
  return (
    <Stack>
      <Title order={2}>{useCaseTerms().part.document}</Title>
      <p className={classes.help}>{t('documentHelp')}</p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <fieldset disabled={!mayWrite || pending} className={classes.fields}>
          <Stack>
            <Choices it={it} draft={draft} change={change} />
          </Stack>
        </fieldset>
        {error && <ProblemNote error={error} />}
        {mayWrite && (
          <Button type="submit" mt="sm" disabled={!dirty} loading={pending} variant={dirty ? 'filled' : 'default'}>
            {t('saveChoice')}
          </Button>
        )}
      </form>
      <Check it={it} />
      <Group className="no-print">
        {(['pdf', 'docx'] as const).map((format) => (
          <Anchor
            key={format}
            href={addressOf(previewDocument, { params: { id: it.id }, query: { format } })}
            target="_blank"
          >
            {t('look', { format: format.toUpperCase() })}
          </Anchor>
        ))}
      </Group>
      {mayWrite && <Keep it={it} />}
      <Kept it={it} />
    </Stack>
  );
};

const Choices = ({
  it,
  draft,
  change,
}: {
  it: Case;
  draft: DocumentChoice;
  change: (more: Partial<DocumentChoice>) => void;
}) => {
  const { t } = useTranslation('cases');
  const terms = useCaseTerms();
  const photos = it.reports.flatMap(({ number, photos }) =>
    photos.map(({ id, caption }) => ({ id, name: caption ?? number })),
  );
  const files = it.attachments.map(({ id, name, caption }) => ({ id, name: caption ?? name }));
  return (
    <>
      <Group align="end">
        <Select
          label={t('language')}
          placeholder={t('asCustomer')}
          clearable
          data={Object.entries(languageNames).map(([value, label]) => ({ value, label }))}
          value={draft.locale}
          onChange={(locale) => change({ locale: locale as DocumentChoice['locale'] })}
        />
        <Select
          label={t('paper')}
          placeholder={t('asCustomer')}
          clearable
          data={papers}
          value={draft.paper}
          onChange={(paper) => change({ paper: paper as DocumentChoice['paper'] })}
        />
        <Switch
          label={t('withTeam')}
          checked={draft.team}
          onChange={(event) => change({ team: event.target.checked })}
        />
      </Group>
      <Checkbox.Group
        label={t('disciplines')}
        value={draft.disciplines.map(String)}
        onChange={(chosen) => change({ disciplines: disciplines.filter((one) => chosen.includes(String(one))) })}
      >
        <Group>
          {disciplines.map((one) => (
            <Checkbox key={one} value={String(one)} label={`D${one} ${terms.discipline[one]}`} />
          ))}
        </Group>
      </Checkbox.Group>
      {(
        [
          ['photoIds', t('photos'), photos],
          ['attachmentIds', t('files'), files],
        ] as const
      ).map(
        ([key, label, rows]) =>
          rows.length > 0 && (
            <Checkbox.Group key={key} label={label} value={draft[key]} onChange={(chosen) => change({ [key]: chosen })}>
              <Group>
                {rows.map(({ id, name }) => (
                  <Checkbox key={id} value={id} label={name} />
                ))}
              </Group>
            </Checkbox.Group>
          ),
      )}
    </>
  );
};

/** What is taken out of the text before it leaves, so that a person may write it better. */
const Check = ({ it }: { it: Case }) => {
  const { t } = useTranslation('cases');
  const versions = Object.values(it.parts).reduce((sum, { version }) => sum + version, it.version);
  const check = useQuery(checkQuery(it.id, versions)).data;
  if (!check) return null;
  return (
    <>
      <Text size="sm">
        {t('goesOut', {
          language: languageNames[check.locale],
          paper: check.paper,
          customer: check.customer ?? t('noCustomer'),
        })}
      </Text>
      {check.masked.length > 0 && (
        <Alert variant="outline" color="yellow.9" title={t('masked')}>
          <List size="sm">
            {check.masked.map(({ words, kind, times }) => (
              <List.Item key={`${kind} ${words}`}>{t(`maskedAs.${kind}`, { words, count: times })}</List.Item>
            ))}
          </List>
        </Alert>
      )}
      {check.unreadable.length > 0 && (
        <Alert variant="outline" color="yellow.9" title={t('unreadable')}>
          {t('unreadableText', { scripts: check.unreadable.join(', ') })}
        </Alert>
      )}
    </>
  );
};

const Keep = ({ it }: { it: Case }) => {
  const { t } = useTranslation('cases');
  const [recipient, setRecipient] = useState('');
  const keep = useKeep(it.id);
  return (
    <div className="no-print">
      <Group align="end">
        <TextInput label={t('recipient')} value={recipient} onChange={(event) => setRecipient(event.target.value)} />
        {(['pdf', 'docx'] as const).map((format) => (
          <Button
            key={format}
            variant="default"
            loading={keep.isPending}
            disabled={recipient.trim() === ''}
            onClick={() => keep.mutate({ format, recipient })}
          >
            {t('keep', { format: format.toUpperCase() })}
          </Button>
        ))}
      </Group>
      {keep.error && <ProblemNote error={keep.error} />}
    </div>
  );
};

const Kept = ({ it }: { it: Case }) => {
  const { t } = useTranslation('cases');
  const format = useFormat();
  return (
    <section aria-label={t('kept')}>
      <Title order={3}>{t('kept')}</Title>
      {it.documents.length === 0 && <Text size="sm">{t('noneKept')}</Text>}
      <ul>
        {it.documents.map((one) => (
          <li key={one.id}>
            <Anchor underline="always" href={addressOf(readKeptDocument, { params: { id: one.id } })}>
              {t('keptRow', {
                revision: one.revision,
                format: one.format.toUpperCase(),
                to: one.recipient,
                by: one.keptBy,
                at: format.instant(one.keptAt),
              })}
            </Anchor>{' '}
            <Text component="span" size="xs" c="dimmed" className={classes.hash}>
              SHA-256 {one.sha256}
            </Text>
          </li>
        ))}
      </ul>
    </section>
  );
};
