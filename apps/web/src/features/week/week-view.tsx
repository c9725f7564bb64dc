import { useTranslation } from 'react-i18next';
import type { Week } from '#contracts/analyses.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat } from '#web/ui/language.ts';
import { MoneyNotes } from '#web/ui/money-notes.tsx';
import { Costliest } from './costliest.tsx';
import { Headlines } from './headlines.tsx';
import { TaskList } from './task-list.tsx';
import { TopCauses } from './top-causes.tsx';
import classes from './week.module.css';

export const WeekView = ({ week }: { week: Week }) => {
  const { t } = useTranslation('week');
  const format = useFormat();
  const { topCauses, costliest, decisions, gaps } = week;
  const open = decisions.filter(({ count }) => count > 0);
  const lacking = gaps.filter(({ count }) => count > 0);

  return (
    <>
      {open.some(({ kind }) => kind === 'safety_unsorted') && <Cautions about={['safety']} />}
      <div className={classes.columns}>
        <div>
          <section className={classes.part}>
            <h2>{t('headlines.title')}</h2>
            <Headlines week={week} />
          </section>
          <section className={classes.part}>
            <h2>{t('causes.title')}</h2>
            {topCauses.length > 0 ? (
              <TopCauses week={week} />
            ) : (
              <EmptyNote title={t('quiet')}>{t('quietText')}</EmptyNote>
            )}
          </section>
        </div>
        <div>
          <section className={classes.part}>
            <h2>{t('decisions.title')}</h2>
            <TaskList
              nothing={t('decisions.nothing')}
              tasks={open.map(({ kind, count, link }) => ({
                key: kind,
                count: format.count(count),
                text: t(`decisions.${kind}`, { count }),
                link,
                urgent: kind === 'safety_unsorted' || kind === 'outside_unsorted',
              }))}
            />
          </section>
          <section className={classes.part}>
            <h2>{t('gaps.title')}</h2>
            <TaskList
              nothing={t('gaps.nothing')}
              tasks={lacking.map(({ kind, count, of, link }) => ({
                key: kind,
                count: format.count(count),
                text: t(`gaps.${kind}`, { count }),
                note: t(kind === 'no_production' ? 'gaps.ofDays' : 'gaps.ofReports', { of: format.count(of) }),
                link,
              }))}
            />
          </section>
        </div>
      </div>
      <section className={classes.part}>
        <h2>{t('costliest.title')}</h2>
        {costliest.length > 0 ? <Costliest rows={costliest} /> : <p>{t('costliest.nothing')}</p>}
      </section>
      <MoneyNotes head={week} />
    </>
  );
};
