import { useMediaQuery } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ParetoControls } from './pareto-controls.tsx';
import { ParetoView } from './pareto-view.tsx';
import { paretoQuery } from './queries.ts';
import { causesRoute } from './routes.ts';

export const CausesPage = () => {
  const { t } = useTranslation('causes');
  const search = causesRoute.useSearch();
  const navigate = useNavigate({ from: causesRoute.fullPath });
  const query = useQuery(paretoQuery(search));
  const narrow = useMediaQuery('(max-width: 48em)', false, { getInitialValueInEffect: false });

  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <FilterBar period={query.data?.period} />
      <ParetoControls
        search={search}
        onChange={(patch) => void navigate({ search: (now) => ({ ...now, ...patch }), resetScroll: false })}
      />
      <QueryBoundary query={query} height={24} isEmpty={({ bars }) => bars.length === 0}>
        {(pareto) => <ParetoView pareto={pareto} search={search} lying={narrow === true} />}
      </QueryBoundary>
    </>
  );
};
