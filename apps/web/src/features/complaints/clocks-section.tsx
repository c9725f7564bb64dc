import { Button, Group, Select, TextInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Clock } from '#contracts/complaint-parts.ts';
import * as contract from '#contracts/complaints.ts';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { AskForm } from './ask-form.tsx';
import { ClockMark } from './clock-mark.tsx';
import classes from './complaints.module.css';
import { ownersQuery, useWrite } from './queries.ts';

interface Props {
  complaint: contract.Complaint;
  zone: string | undefined;
  mayWrite: boolean;
}

/** Who owes which reply by when; what was sent; and why a clock stood still. */
export const ClocksSection = ({ complaint, zone, mayWrite }: Props) => {
  const { t } = useTranslation('complaints');
  return (
    <section className={classes.section} aria-label={t('clocks')}>
      <h2>{t('clocks')}</h2>
      <p>{t('clocksMeaning')}</p>
      <ul className={classes.clocks}>
        {complaint.clocks.map((clock) => (
          <ClockCard key={clock.id} complaint={complaint} clock={clock} zone={zone} mayWrite={mayWrite} />
        ))}
      </ul>
    </section>
  );
};

type Step = 'answer' | 'pause';

const ClockCard = ({ complaint, clock, zone, mayWrite }: Props & { clock: Clock }) => {
  const { t } = useTranslation('complaints');
  const format = useFormat();
  const [asked, setAsked] = useState<Step>();
  const [sentAt, setSentAt] = useState('');
  const of = { params: { id: complaint.id, kind: clock.kind }, version: clock.version };
  const answer = useWrite((sent: string) =>
    call(contract.answerClock, {
      ...of,
      body: { sent, answeredAt: sentAt === '' ? null : new Date(sentAt).toISOString() },
    }),
  );
  const pause = useWrite((reason: string) => call(contract.pauseClock, { ...of, body: { reason } }));
  const resume = useWrite(() => call(contract.resumeClock, { ...of, body: {} }));
  const handOver = useWrite((ownerId: string) => call(contract.handOverClock, { ...of, body: { ownerId } }));
  const owners = useQuery({ ...ownersQuery(complaint.plantId), enabled: mayWrite }).data ?? [];
  const step = asked === 'answer' ? answer : pause;
  const error = resume.error ?? handOver.error;
  const at = (value: string) => format.instant(value, zone);
  return (
    <li className={classes.clock}>
      <h3>{t(`reply.${clock.kind}`)}</h3>
      <ClockMark state={clock.state} minutesLeft={clock.minutesLeft} />
      <p>
        {t('dueBy', { due: at(clock.dueAt), owner: clock.ownerName })}
        <br />
        {t(`length.${clock.unit}`, { count: clock.amount })}
      </p>
      {clock.pauseReason && <p>{t('pausedBecause', { reason: clock.pauseReason })}</p>}
      {clock.sent && clock.answeredAt && (
        <p>{t('sentOn', { at: at(clock.answeredAt), by: clock.answeredBy, sent: clock.sent })}</p>
      )}
      {clock.events.length > 0 && (
        <details>
          <summary>{t('events')}</summary>
          <ul className={classes.cases}>
            {clock.events.map((event) => (
              <li key={event.id}>
                {at(event.at)}: {t(`step.${event.step}`)} ({event.actor}){event.note && `: ${event.note}`}
              </li>
            ))}
          </ul>
        </details>
      )}
      {mayWrite && !clock.answeredAt && (
        <Group mt="sm" className="no-print">
          <Button onClick={() => setAsked('answer')}>{t('answer')}</Button>
          {clock.pausedAt ? (
            <Button variant="default" loading={resume.isPending} onClick={() => resume.mutate(undefined)}>
              {t('resume')}
            </Button>
          ) : (
            <Button variant="default" onClick={() => setAsked('pause')}>
              {t('pause')}
            </Button>
          )}
          <Select
            label={t('handOver')}
            data={owners.map(({ id, name }) => ({ value: id, label: name }))}
            value={clock.ownerId}
            allowDeselect={false}
            onChange={(id) => id && id !== clock.ownerId && handOver.mutate(id)}
          />
        </Group>
      )}
      {error && <ProblemNote error={error} />}
      {asked && (
        <AskForm
          title={t(asked)}
          label={t(asked === 'answer' ? 'whatSent' : 'reason')}
          pending={step.isPending}
          error={step.error}
          onDone={() => setAsked(undefined)}
          onText={(text) => step.mutate(text, { onSuccess: () => setAsked(undefined) })}
        >
          {asked === 'answer' && (
            <TextInput
              type="datetime-local"
              label={t('sentAt')}
              description={t('form.browserTime')}
              value={sentAt}
              onChange={(event) => setSentAt(event.currentTarget.value)}
            />
          )}
        </AskForm>
      )}
    </li>
  );
};
