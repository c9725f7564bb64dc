import { Group, Select } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { MaturityView } from './maturity-view.tsx';
import { maturityQuery } from './queries.ts';
import { maturityRoute } from './routes.ts';

const spans = [12, 18, 24, 36, 48];
const horizons = [3, 6, 12, 24];

export const MaturityPage = () => {
  const { t } = useTranslation('maturity');
  const navigate = useNavigate({ from: maturityRoute.fullPath });
  // The page is about build months up to today: a period found elsewhere does not narrow it.
  const { from, to, ...search } = maturityRoute.useSearch();
  const result = useQuery(maturityQuery(search));
  const choose = (key: 'months' | 'horizon') => (value: string | null) =>
    void navigate({ search: (now) => ({ ...now, [key]: Number(value) }), resetScroll: false });
  const counts = (values: readonly number[]) =>
    values.map((value) => ({ value: `${value}`, label: t('span', { count: value }) }));

  return (
    <>
      <PageHead title={t('title')}>{t('lead')}</PageHead>
      <FilterBar timeless />
      <Group align="flex-end" gap="md" mb="lg" className="no-print">
        <Select
          label={t('controls.months')}
          data={counts(spans)}
          value={`${search.months ?? 24}`}
          onChange={choose('months')}
          allowDeselect={false}
        />
        <Select
          label={t('controls.horizon')}
          data={counts(horizons)}
          value={`${search.horizon ?? 6}`}
          onChange={choose('horizon')}
          allowDeselect={false}
        />
      </Group>
      <QueryBoundary query={result} height={40}>
        {(data) => <MaturityView data={data} />}
      </QueryBoundary>
    </>
  );
};
