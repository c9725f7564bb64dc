import { ActionIcon, Anchor, Button, FileButton, Text, Textarea, Title } from '@mantine/core';
import { IconPaperclip, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Discipline } from '#contracts/case-parts.ts';
import { type Case, readAttachment } from '#contracts/cases.ts';
import { addressOf } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './cases.module.css';
import { useAttach, useComment, useDetach } from './queries.ts';

interface Props {
  it: Case;
  discipline: Discipline;
  /** whether files may be added and taken away */
  open: boolean;
  mayWrite: boolean;
}

/** Files and comments of a discipline. */
export const Talk = ({ it, discipline, open, mayWrite }: Props) => (
  <>
    <Files it={it} discipline={discipline} open={open} />
    <Comments it={it} discipline={discipline} mayWrite={mayWrite} />
  </>
);

const Files = ({ it, discipline, open }: Omit<Props, 'mayWrite'>) => {
  const { t } = useTranslation('cases');
  const attach = useAttach(it.id);
  const detach = useDetach(it.id);
  const files = it.attachments.filter((file) => file.discipline === discipline);
  return (
    <section aria-label={t('files')}>
      <Title order={3}>{t('files')}</Title>
      {files.length === 0 && <Text size="sm">{t('noFiles')}</Text>}
      <ul className={classes.files}>
        {files.map(({ id, name, width }) => (
          <li key={id}>
            {width !== null && (
              <img
                src={addressOf(readAttachment, { params: { id }, query: { size: 'small' } })}
                alt={name}
                height={96}
              />
            )}
            <Anchor underline="always" href={addressOf(readAttachment, { params: { id } })}>
              {name}
            </Anchor>
            {open && (
              <ActionIcon
                variant="subtle"
                size="lg"
                className="no-print"
                aria-label={t('dropFile', { name })}
                onClick={() => detach.mutate(id)}
              >
                <IconTrash size={16} aria-hidden />
              </ActionIcon>
            )}
          </li>
        ))}
      </ul>
      {open && (
        <FileButton onChange={(file) => file && attach.mutate({ discipline, file })}>
          {(props) => (
            <Button
              {...props}
              variant="default"
              className="no-print"
              loading={attach.isPending}
              leftSection={<IconPaperclip size={16} aria-hidden />}
            >
              {t('addFile')}
            </Button>
          )}
        </FileButton>
      )}
      {(attach.error ?? detach.error) && <ProblemNote error={attach.error ?? detach.error} />}
    </section>
  );
};

const Comments = ({ it, discipline, mayWrite }: Omit<Props, 'open'>) => {
  const { t } = useTranslation('cases');
  const format = useFormat();
  const [text, setText] = useState('');
  const comment = useComment(it.id);
  const comments = it.comments.filter((one) => one.discipline === discipline);
  return (
    <section aria-label={t('comments')}>
      <Title order={3}>{t('comments')}</Title>
      {comments.length === 0 && <Text size="sm">{t('noComments')}</Text>}
      {comments.map((one) => (
        <div key={one.id} className={classes.comment}>
          <Text size="sm" c="dimmed">
            {one.author}, {format.instant(one.at)}
          </Text>
          <Text className={classes.said}>{one.text}</Text>
        </div>
      ))}
      {mayWrite && (
        <form
          className="no-print"
          onSubmit={(event) => {
            event.preventDefault();
            comment.mutate({ discipline, text }, { onSuccess: () => setText('') });
          }}
        >
          <Textarea label={t('comment')} autosize value={text} onChange={(event) => setText(event.target.value)} />
          <Button type="submit" mt="xs" variant="default" loading={comment.isPending} disabled={text.trim() === ''}>
            {t('send')}
          </Button>
          {comment.error && <ProblemNote error={comment.error} />}
        </form>
      )}
    </section>
  );
};
