import { SegmentedControl } from '@mantine/core';
import { useMediaQuery } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { type GateMoney, gateMoney } from '#contracts/gates.ts';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { GatesView } from './gates-view.tsx';
import { withPointCost } from './links.ts';
import { gatesQuery } from './queries.ts';
import { gatesRoute } from './routes.ts';

export const GatesPage = () => {
  const { t } = useTranslation('gates');
  const navigate = useNavigate({ from: gatesRoute.fullPath });
  const search = gatesRoute.useSearch();
  const { money, pointCost, ...filter } = search;
  const upright = useMediaQuery('(max-width: 48em)', false, { getInitialValueInEffect: false });
  const result = useQuery(gatesQuery(search));

  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <FilterBar always period={result.data?.period} currency={result.data?.currency} />
      <SegmentedControl
        className="no-print"
        mb="md"
        aria-label={t('money.label')}
        data={gateMoney.map((value) => ({ value, label: t(`money.${value}`) }))}
        value={money ?? 'withEstimates'}
        orientation={upright ? 'vertical' : 'horizontal'}
        onChange={(value) =>
          void navigate({ search: (now) => ({ ...now, money: value as GateMoney }), resetScroll: false })
        }
      />
      <QueryBoundary query={result} height={40} isEmpty={({ reports }) => reports === 0}>
        {(data) => (
          <GatesView
            data={data}
            filter={filter}
            onCost={(gate, minor) =>
              void navigate({
                search: (now) => ({ ...now, pointCost: withPointCost(pointCost ?? [], gate, minor) }),
                resetScroll: false,
              })
            }
          />
        )}
      </QueryBoundary>
    </>
  );
};
