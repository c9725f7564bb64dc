import { useMediaQuery } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ParetoControls } from './pareto-controls.tsx';
import { ParetoView } from './pareto-view.tsx';
import { filterIn, paretoQuery, ratesQuery } from './queries.ts';
import { RateView } from './rate-view.tsx';
import { causesRoute } from './routes.ts';

export const CausesPage = () => {
  const { t } = useTranslation('causes');
  const search = causesRoute.useSearch();
  const navigate = useNavigate({ from: causesRoute.fullPath });
  const query = useQuery(paretoQuery(search));
  const filter = filterIn(search);
  const rates = useQuery(ratesQuery(filter));
  const narrow = useMediaQuery('(max-width: 48em)', false, { getInitialValueInEffect: false });

  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <FilterBar always period={query.data?.period} currency={query.data?.currency} />
      <ParetoControls
        search={search}
        onChange={(patch) => void navigate({ search: (now) => ({ ...now, ...patch }), resetScroll: false })}
      />
      <QueryBoundary query={query} height={24} isEmpty={({ bars }) => bars.length === 0}>
        {(pareto) => <ParetoView pareto={pareto} filter={filter} lying={narrow === true} />}
      </QueryBoundary>
      <QueryBoundary query={rates} height={18} isEmpty={() => query.data?.bars.length === 0} empty={null}>
        {(data) => <RateView rates={data} filter={filter} />}
      </QueryBoundary>
    </>
  );
};
