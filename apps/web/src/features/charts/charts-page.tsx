import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ChartControls } from './chart-controls.tsx';
import { ControlFigure } from './control-figure.tsx';
import { CusumFigure } from './cusum-figure.tsx';
import { MarkerList } from './marker-list.tsx';
import { chartsQuery, filterIn } from './queries.ts';
import { chartsRoute } from './routes.ts';
import { Verdict } from './verdict.tsx';

export const ChartsPage = () => {
  const { t } = useTranslation('charts');
  const search = chartsRoute.useSearch();
  const navigate = useNavigate({ from: chartsRoute.fullPath });
  const query = useQuery(chartsQuery(search));
  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <FilterBar always period={query.data?.period} />
      <ChartControls
        search={search}
        data={query.data}
        onChange={(patch) => void navigate({ search: (now) => ({ ...now, ...patch }), resetScroll: false })}
      />
      <QueryBoundary query={query} height={24}>
        {(data) =>
          data.reason !== null ? (
            <EmptyNote>{t(`reason.${data.reason}`)}</EmptyNote>
          ) : (
            <>
              <Verdict data={data} />
              <ControlFigure data={data} filter={filterIn(search)} />
              <MarkerList data={data} />
              <CusumFigure data={data} />
            </>
          )
        }
      </QueryBoundary>
    </>
  );
};
