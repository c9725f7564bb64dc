import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { CostView } from './cost-view.tsx';
import { EscapesView } from './escapes-view.tsx';
import { costsQuery, escapesQuery } from './queries.ts';
import { escapesRoute } from './routes.ts';

export const EscapesPage = () => {
  const { t } = useTranslation('escapes');
  const { weight, ...filter } = escapesRoute.useSearch();
  const escapes = useQuery(escapesQuery(filter));
  const costs = useQuery(costsQuery(filter));

  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <FilterBar always period={escapes.data?.period} currency={escapes.data?.currency} />
      <QueryBoundary query={escapes} height={30} isEmpty={({ total }) => total.reports === 0}>
        {(data) => <EscapesView escapes={data} filter={filter} weight={weight ?? 'reports'} />}
      </QueryBoundary>
      <QueryBoundary query={costs} height={20} isEmpty={() => escapes.data?.total.reports === 0} empty={null}>
        {(data) => <CostView costs={data} filter={filter} />}
      </QueryBoundary>
    </>
  );
};
