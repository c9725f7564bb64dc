import { Anchor, Button, FileButton, Group, Text, Textarea, TextInput, Title } from '@mantine/core';
import { IconPaperclip } from '@tabler/icons-react';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type ActionEvidence, type ActionOf, isClosed, readEvidenceFile } from '#contracts/actions.ts';
import { addressOf } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './actions.module.css';
import { isChangeable } from './changeable.ts';
import { useActionWrites } from './queries.ts';

/** What shows that it was done: words, photos, files, reports. */
export const EvidenceSection = ({ action, mayWrite }: { action: ActionOf; mayWrite: boolean }) => {
  const { t } = useTranslation('actions');
  const { addText, addFile, remove } = useActionWrites();
  const [text, setText] = useState('');
  const error = addText.error ?? addFile.error ?? remove.error;
  const { id } = action;
  return (
    <section className={classes.section} aria-label={t('evidence.title')}>
      <Title order={2} mb="sm">
        {t('evidence.title')}
      </Title>
      {action.evidence.length === 0 && <Text size="sm">{t('evidence.none')}</Text>}
      <ul className={classes.evidence}>
        {action.evidence.map((one) => (
          <li key={one.id}>
            <Shown evidence={one} />
            {mayWrite && isChangeable(action) && (
              <Button
                variant="subtle"
                size="compact-sm"
                className="no-print"
                loading={remove.isPending && remove.variables === one.id}
                onClick={() => remove.mutate(one.id)}
              >
                {t('evidence.remove')}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {mayWrite && !isClosed(action.state) && (
        <form
          className="no-print"
          onSubmit={(event) => {
            event.preventDefault();
            if (text.trim()) addText.mutate({ id, body: { text: text.trim() } }, { onSuccess: () => setText('') });
          }}
        >
          <Textarea
            label={t('evidence.write')}
            autosize
            minRows={2}
            maxLength={10_000}
            maw="40rem"
            value={text}
            onChange={(event) => setText(event.currentTarget.value)}
          />
          <Group mt="sm">
            <Button type="submit" variant="default" loading={addText.isPending} disabled={text.trim() === ''}>
              {t('evidence.add')}
            </Button>
            <FileButton onChange={(file) => file && addFile.mutate({ id, file })}>
              {(props) => (
                <Button
                  {...props}
                  variant="default"
                  leftSection={<IconPaperclip size={18} aria-hidden />}
                  loading={addFile.isPending}
                >
                  {t('evidence.addFile')}
                </Button>
              )}
            </FileButton>
          </Group>
        </form>
      )}
      {mayWrite && !isClosed(action.state) && <ReportField action={action} />}
      {error && <ProblemNote error={error} />}
    </section>
  );
};

const Shown = ({ evidence }: { evidence: ActionEvidence }) => {
  const { t } = useTranslation('actions');
  const format = useFormat();
  const { id, kind, text, failureId, failureNumber, fileName, addedBy, addedAt } = evidence;
  const address = addressOf(readEvidenceFile, { params: { id } });
  return (
    <>
      {kind === 'photo' && (
        <a href={address}>
          <img
            src={addressOf(readEvidenceFile, { params: { id }, query: { size: 'small' } })}
            alt={text ?? fileName ?? ''}
          />
        </a>
      )}
      {kind === 'file' && (
        <Anchor href={address} download>
          {fileName}
        </Anchor>
      )}
      {failureId && (
        <Anchor inherit renderRoot={(props) => <Link {...props} to="/failures/$id" params={{ id: failureId }} />}>
          {t('evidence.report', { number: failureNumber })}
        </Anchor>
      )}{' '}
      {text}
      <Text size="sm" c="dimmed" component="div">
        {addedBy}, {format.instant(addedAt)}
      </Text>
    </>
  );
};

/** Links a failure report of the plant by its number. */
const ReportField = ({ action: { id, plantId } }: { action: ActionOf }) => {
  const { t } = useTranslation('actions');
  const { addReport } = useActionWrites();
  const [number, setNumber] = useState('');
  const unknown = addReport.data === false && addReport.variables?.number === number.trim();
  return (
    <form
      className="no-print"
      onSubmit={(event) => {
        event.preventDefault();
        if (!number.trim()) return;
        addReport.mutate({ id, plantId, number: number.trim() }, { onSuccess: (known) => known && setNumber('') });
      }}
    >
      <Group mt="sm" align="flex-end">
        <TextInput
          label={t('evidence.number')}
          maxLength={60}
          value={number}
          onChange={(event) => setNumber(event.currentTarget.value)}
          error={unknown ? t('evidence.unknown') : undefined}
        />
        <Button type="submit" variant="default" loading={addReport.isPending} disabled={number.trim() === ''}>
          {t('evidence.link')}
        </Button>
      </Group>
      {addReport.isError && <ProblemNote error={addReport.error} />}
    </form>
  );
};
