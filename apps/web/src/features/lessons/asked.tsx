import { Anchor, Button, Group, Radio, Select, Stack, Textarea, TextInput, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { AskedReadAcross } from '#contracts/lessons.ts';
import { colleaguesQuery } from '#web/features/actions/queries.ts';
import { useFormat } from '#web/ui/language.ts';
import { useMay } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './lessons.module.css';
import { useAnswer } from './queries.ts';

/** What a closed case of another plant asks this one, and its answer. */
export const Asked = ({ it }: { it: AskedReadAcross }) => {
  const { t } = useTranslation('lessons');
  const format = useFormat();
  const mayAnswer = useMay('cases.write', it.plantId);
  return (
    <article className={classes.lesson} aria-label={it.title}>
      <Title order={3}>{it.title}</Title>
      <p className={classes.small}>
        {t('askedBy', { from: it.fromPlantCode, plant: it.plantCode, at: format.instant(it.askedAt) })}{' '}
        {it.why.map((why) => t(`because.${why}`)).join(', ')}
      </p>
      <dl>
        <dt>{t('problem')}</dt>
        <dd>{it.problem}</dd>
        <dt>{t('rootCause')}</dt>
        <dd>{it.rootCause}</dd>
        <dt>{t('check')}</dt>
        <dd>{it.check}</dd>
      </dl>
      {it.answer ? (
        <p>
          <strong>{t(`answers.${it.answer}`)}</strong>: {it.answerText} ({it.answeredBy}){' '}
          {it.actionId && (
            <Anchor
              inherit
              renderRoot={(props) => <Link {...props} to="/actions/$id" params={{ id: it.actionId ?? '' }} />}
            >
              {t('action')}
            </Anchor>
          )}
        </p>
      ) : (
        mayAnswer && <AnswerForm it={it} />
      )}
    </article>
  );
};

const AnswerForm = ({ it }: { it: AskedReadAcross }) => {
  const { t } = useTranslation('lessons');
  const [kind, setKind] = useState<'applies' | 'does_not_apply' | null>(null);
  const [text, setText] = useState('');
  const [ownerId, setOwner] = useState<string | null>(null);
  const [due, setDue] = useState('');
  const people = useQuery({ ...colleaguesQuery(it.plantId), enabled: kind === 'applies' }).data ?? [];
  const answer = useAnswer(it);
  const ready = text.trim().length >= 3 && (kind === 'does_not_apply' || (ownerId !== null && due !== ''));
  return (
    <form
      className="no-print"
      onSubmit={(event) => {
        event.preventDefault();
        if (kind === 'applies') answer.mutate({ answer: kind, text, ownerId: ownerId ?? '', due });
        else answer.mutate({ answer: 'does_not_apply', text });
      }}
    >
      <Stack gap="sm">
        <Radio.Group label={t('answer')} value={kind} onChange={(value) => setKind(value as typeof kind)}>
          <Group>
            {(['applies', 'does_not_apply'] as const).map((one) => (
              <Radio key={one} value={one} label={t(`answers.${one}`)} />
            ))}
          </Group>
        </Radio.Group>
        {kind && (
          <>
            <Textarea
              label={t(kind === 'applies' ? 'whatDone' : 'whyNot')}
              required
              autosize
              value={text}
              onChange={(event) => setText(event.target.value)}
            />
            {kind === 'applies' && (
              <Group align="end">
                <Select
                  label={t('owner')}
                  required
                  searchable
                  data={people.map(({ id, name }) => ({ value: id, label: name }))}
                  value={ownerId}
                  onChange={setOwner}
                />
                <TextInput
                  type="date"
                  label={t('due')}
                  required
                  value={due}
                  onChange={(event) => setDue(event.target.value)}
                />
              </Group>
            )}
            {answer.error && <ProblemNote error={answer.error} />}
            <div>
              <Button type="submit" loading={answer.isPending} disabled={!ready}>
                {t('send')}
              </Button>
            </div>
          </>
        )}
      </Stack>
    </form>
  );
};
