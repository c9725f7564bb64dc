import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { CurrencyPicker } from '#web/ui/filter/currency-picker.tsx';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { WeekSteps } from '#web/ui/week-steps.tsx';
import { weekQuery } from './queries.ts';
import { weekRoute } from './routes.ts';
import classes from './week.module.css';
import { WeekView } from './week-view.tsx';

export const WeekPage = () => {
  const { t } = useTranslation('week');
  const format = useFormat();
  const search = weekRoute.useSearch();
  const navigate = useNavigate({ from: weekRoute.fullPath });
  const query = useQuery(weekQuery(search));
  const period = query.data?.period;
  const goTo = (start: string) => void navigate({ search: (now) => ({ ...now, start }), resetScroll: false });

  return (
    <>
      <PageHead title={period ? t('titleOf', { week: format.week(period.from) }) : t('title')} />
      <section className={classes.about} aria-label={t('about')}>
        {period && <WeekSteps period={period} onStart={goTo} />}
        <PlantPicker />
        {query.data && <CurrencyPicker shown={query.data.currency} />}
      </section>
      <QueryBoundary query={query} height={30}>
        {(week) => <WeekView week={week} />}
      </QueryBoundary>
    </>
  );
};
