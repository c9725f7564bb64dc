import { useTranslation } from 'react-i18next';
import type { WhatIfInput, WhatIfResult } from '#contracts/what-if.ts';
import { CauseName } from '#web/ui/chart/cause-name.tsx';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';

type Row = WhatIfResult['costs'][number];

interface Props {
  input: WhatIfInput;
  result: WhatIfResult;
  filter: FilterValues;
}

/** What the faults of each cause cost in the period: the data behind the saving. */
export const CostsTable = ({ input, result: { costs, currency, period }, filter }: Props) => {
  const { t } = useTranslation('what-if');
  const format = useFormat();
  const acted = new Set(input.options.flatMap(({ effects }) => effects.map(({ cause }) => cause as string)));
  const columns: Column<Row>[] = [
    {
      id: 'cause',
      header: t('effect.cause'),
      rowHeader: true,
      phone: 'title',
      cell: ({ cause }) => <CauseName cause={cause} />,
    },
    {
      id: 'reports',
      header: t('costs.reports'),
      align: 'end',
      cell: ({ cause, reports }) => (
        <ReportsLink filter={{ ...filter, ...period, cause: [cause] }}>{format.count(reports)}</ReportsLink>
      ),
    },
    {
      id: 'booked',
      header: t('costs.booked'),
      align: 'end',
      sortBy: ({ bookedMinor }) => bookedMinor,
      cell: ({ bookedMinor }) => <MoneyText money={{ amountMinor: bookedMinor, currency }} basis="booked" named />,
    },
    {
      id: 'estimated',
      header: t('costs.estimated'),
      align: 'end',
      sortBy: ({ estimateMinor }) => estimateMinor,
      cell: ({ estimateMinor }) => (
        <MoneyText money={{ amountMinor: estimateMinor, currency }} basis="estimated" named />
      ),
    },
    {
      id: 'acted',
      header: t('costs.acted'),
      cell: ({ cause }) => (acted.has(cause) ? t('costs.yes') : t('costs.no')),
    },
  ];
  return (
    <DataTable
      caption={t(`costs.caption.${input.money}`)}
      columns={columns}
      rows={costs}
      rowKey={({ cause }) => cause}
    />
  );
};
