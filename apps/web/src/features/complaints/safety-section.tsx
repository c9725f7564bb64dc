import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import * as contract from '#contracts/complaints.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { AskForm } from './ask-form.tsx';
import classes from './complaints.module.css';
import { useWrite } from './queries.ts';

interface Props {
  complaint: contract.Complaint;
  zone: string | undefined;
  mayWrite: boolean;
}

/** What a safety-relevant complaint asks for: the person responsible, and a second person's word. */
export const SafetySection = ({ complaint, zone, mayWrite }: Props) => {
  const { t } = useTranslation('complaints');
  const format = useFormat();
  const [unflagging, setUnflagging] = useState(false);
  const { id, version } = complaint;
  const of = { params: { id }, version };
  const flag = useWrite(() => call(contract.flagSafety, { ...of, body: { safety: true } }));
  const see = useWrite(() => call(contract.acknowledgeSafety, { ...of, body: { seen: true } }));
  const unflag = useWrite((reason: string) => call(contract.askUnflag, { ...of, body: { reason } }));
  const consent = useWrite(({ consentId, answer }: { consentId: string; answer: 'given' | 'refused' }) =>
    call(contract.answerConsent, { params: { id, consentId }, version, body: { answer } }),
  );
  const error = flag.error ?? see.error ?? consent.error;
  const waiting = (kind: string) => complaint.consents.some((it) => it.kind === kind && it.answer === null);
  const flagged = complaint.safety || complaint.consents.length > 0;
  if (!flagged && !mayWrite) return null;
  return (
    <section className={classes.section} aria-label={t('safety.title')}>
      {flagged && <h2>{t('safety.title')}</h2>}
      {complaint.safety && (
        <>
          <Cautions about={['safety']} />
          <p>
            {complaint.safetySeenAt
              ? t('safety.seen', { by: complaint.safetySeenBy, at: format.instant(complaint.safetySeenAt, zone) })
              : complaint.safetyPerson
                ? t('safety.waits', { who: complaint.safetyPerson })
                : t('safety.nobody')}
          </p>
        </>
      )}
      <ul className={classes.cases}>
        {complaint.consents.map((it) => (
          <li key={it.id}>
            {t(`consent.${it.kind}`, { by: it.askedBy, at: format.instant(it.askedAt, zone), reason: it.reason })}{' '}
            <strong>{it.answer ? t(`consent.${it.answer}`, { by: it.answeredBy }) : t('consent.waiting')}</strong>
            {it.mayAnswer && (
              <Group my="xs" className="no-print">
                {(['given', 'refused'] as const).map((answer) => (
                  <Button
                    key={answer}
                    variant={answer === 'given' ? 'filled' : 'default'}
                    loading={consent.isPending}
                    onClick={() => consent.mutate({ consentId: it.id, answer })}
                  >
                    {t(`consent.give.${answer}`)}
                  </Button>
                ))}
              </Group>
            )}
          </li>
        ))}
      </ul>
      <Group className="no-print">
        {complaint.maySeeSafety && (
          <Button loading={see.isPending} onClick={() => see.mutate(undefined)}>
            {t('safety.acknowledge')}
          </Button>
        )}
        {mayWrite && complaint.safety && !waiting('unflag') && (
          <Button variant="default" onClick={() => setUnflagging(true)}>
            {t('safety.unflag')}
          </Button>
        )}
        {mayWrite && !complaint.safety && (
          <Button variant="default" loading={flag.isPending} onClick={() => flag.mutate(undefined)}>
            {t('safety.flag')}
          </Button>
        )}
      </Group>
      {error && <ProblemNote error={error} />}
      {unflagging && (
        <AskForm
          title={t('safety.unflag')}
          label={t('reason')}
          pending={unflag.isPending}
          error={unflag.error}
          onDone={() => setUnflagging(false)}
          onText={(reason) => unflag.mutate(reason, { onSuccess: () => setUnflagging(false) })}
        />
      )}
    </section>
  );
};
