import { Button, TextInput } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type Alert, answerAlert } from '#contracts/containment.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import classes from './containment.module.css';
import { alertsQuery, useWrite } from './queries.ts';

/** What other plants hold back that the reader's plants share. */
export const AlertsPage = () => {
  const { t } = useTranslation('containment');
  const list = useInfiniteQuery(alertsQuery);
  return (
    <>
      <PageHead title={t('alerts.title')}>{t('alerts.lead')}</PageHead>
      <QueryBoundary
        query={list}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('alerts.none')} />}
      >
        {({ pages }) => (
          <>
            {pages.flatMap(({ items }) => items.map((alert) => <AlertCard key={alert.id} alert={alert} />))}
            {list.hasNextPage && (
              <Button variant="default" loading={list.isFetchingNextPage} onClick={() => void list.fetchNextPage()}>
                {t('alerts.more')}
              </Button>
            )}
          </>
        )}
      </QueryBoundary>
    </>
  );
};

const AlertCard = ({ alert }: { alert: Alert }) => {
  const { t } = useTranslation('containment');
  const format = useFormat();
  const [text, setText] = useState('');
  const mayAnswer = useMay('containment.write', alert.plantId) && alert.open;
  const answer = useWrite((affected: boolean) =>
    call(answerAlert, { params: { id: alert.id }, version: alert.version, body: { affected, answer: text } }),
  );
  return (
    <section className={classes.section} aria-label={`${alert.number} ${alert.plantCode}`}>
      <h2>{t('alerts.head', { number: alert.number, from: alert.from, plant: alert.plantCode })}</h2>
      <p>
        {t('sharesSince', {
          shares: alert.shares.map((thing) => t(`shares.${thing}`)).join(', '),
          day: format.day(alert.toldAt.slice(0, 10)),
        })}{' '}
        {[...alert.parts, ...alert.lots, ...alert.toolTypes].join(', ')}
        {'. '}
        {t('built', { from: format.day(alert.builtFrom), to: format.day(alert.builtTo) })}{' '}
        {t('alerts.own', { count: alert.ownReports })}
      </p>
      {alert.answer && (
        <p>
          <strong>{t(alert.affected ? 'affected' : 'notAffected')}</strong>: {alert.answer} ({alert.answeredBy})
        </p>
      )}
      {mayAnswer && (
        <div className={`${classes.form} no-print`}>
          <TextInput label={t('alerts.answer')} value={text} onChange={(event) => setText(event.currentTarget.value)} />
          {[true, false].map((affected) => (
            <Button
              key={String(affected)}
              variant="default"
              disabled={text.trim().length < 3}
              loading={answer.isPending}
              onClick={() => answer.mutate(affected)}
            >
              {t(affected ? 'affected' : 'notAffected')}
            </Button>
          ))}
          {answer.error && <ProblemNote error={answer.error} />}
        </div>
      )}
    </section>
  );
};
