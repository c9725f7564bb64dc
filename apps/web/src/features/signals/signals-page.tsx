import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Signal } from '#contracts/signals.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { signalsQuery } from './queries.ts';
import { signalsRoute } from './routes.ts';
import { SignalItem } from './signal-item.tsx';
import classes from './signals.module.css';
import { SilenceForm } from './silence-form.tsx';
import { SilencedList } from './silenced-list.tsx';

export const SignalsPage = () => {
  const { t } = useTranslation('signals');
  const format = useFormat();
  const filter = signalsRoute.useSearch();
  const query = useQuery(signalsQuery(filter));
  const [chosen, choose] = useState<Signal | null>(null);
  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <FilterBar always period={query.data?.period} />
      <QueryBoundary query={query} height={24}>
        {(data) => (
          <>
            {data.signals.length === 0 ? (
              <EmptyNote title={t('none')}>{t('noneText', { tested: format.count(data.tested) })}</EmptyNote>
            ) : (
              <ol className={classes.list}>
                {data.signals.map((signal) => (
                  <SignalItem
                    key={signal.key}
                    signal={signal}
                    data={data}
                    filter={filter}
                    onSilence={() => choose(signal)}
                  />
                ))}
              </ol>
            )}
            {data.more > 0 && <p>{t('more', { count: data.more })}</p>}
            <p className={classes.note}>
              {t('meaning', {
                tested: format.count(data.tested),
                reports: format.count(data.reports),
                rate: format.percent(data.falseDiscoveryRate, 0),
              })}{' '}
              {data.withoutExpectation > 0 && t('withoutExpectation', { count: data.withoutExpectation })}
            </p>
            <SilencedList data={data} />
            {chosen && <SilenceForm signal={chosen} filter={filter} onDone={() => choose(null)} />}
          </>
        )}
      </QueryBoundary>
    </>
  );
};
