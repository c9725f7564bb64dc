import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { CurrencyPicker } from '#web/ui/filter/currency-picker.tsx';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { weekQuery } from './queries.ts';
import { weekRoute } from './routes.ts';
import classes from './week.module.css';
import { WeekSteps } from './week-steps.tsx';
import { WeekView } from './week-view.tsx';

export const WeekPage = () => {
  const { t } = useTranslation('week');
  const format = useFormat();
  const search = weekRoute.useSearch();
  const query = useQuery(weekQuery(search));
  const period = query.data?.period;

  return (
    <>
      <PageHead title={period ? t('titleOf', { week: format.week(period.from) }) : t('title')} />
      <section className={classes.about} aria-label={t('about')}>
        <WeekSteps period={period} />
        <PlantPicker />
        {query.data && <CurrencyPicker shown={query.data.currency} />}
      </section>
      <QueryBoundary query={query} height={30}>
        {(week) => <WeekView week={week} />}
      </QueryBoundary>
    </>
  );
};
