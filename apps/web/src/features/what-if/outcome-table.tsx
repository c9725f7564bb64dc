import { useTranslation } from 'react-i18next';
import type { Estimate } from '#contracts/shared/estimate.ts';
import type { WhatIfInput, WhatIfResult } from '#contracts/what-if.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { isBest, namesOf, type OutcomeRow, outcomeRows } from './outcomes.ts';

export const OutcomeTable = ({ input, result }: { input: WhatIfInput; result: WhatIfResult }) => {
  const { t } = useTranslation('what-if');
  const format = useFormat();
  const { currency } = result;
  const short = (minor: number) => format.moneyShort({ amountMinor: Math.round(minor), currency });
  const saved = (estimate: Estimate) => (
    <EstimateText estimate={estimate} write={(minor) => `~ ${short(minor)}`} writeLimit={short} brief />
  );
  const years = (value: number) => format.significant(value, 2);
  const columns: Column<OutcomeRow>[] = [
    {
      id: 'set',
      header: t('outcome.set'),
      rowHeader: true,
      phone: 'title',
      cell: (row) => (
        <>
          {namesOf(row.keys, input).join(' + ')}
          {isBest(row, result) && <small> {t('outcome.best')}</small>}
          {row.role === 'together' && <small> {t('outcome.together')}</small>}
        </>
      ),
    },
    { id: 'once', header: t('option.once'), align: 'end', cell: ({ onceMinor }) => short(onceMinor) },
    { id: 'yearly', header: t('option.yearly'), align: 'end', cell: ({ yearlyMinor }) => short(yearlyMinor) },
    {
      id: 'saving',
      header: t('outcome.saving'),
      align: 'end',
      sortBy: ({ savingPerYear }) => savingPerYear.value,
      cell: ({ savingPerYear }) => saved(savingPerYear),
    },
    {
      id: 'net',
      header: t('outcome.net'),
      align: 'end',
      sortBy: ({ netPerYear }) => netPerYear.value,
      cell: ({ netPerYear }) => saved(netPerYear),
    },
    {
      id: 'payback',
      header: t('outcome.payback'),
      align: 'end',
      cell: ({ paybackYears, reason }) =>
        paybackYears.value === null && reason === null ? (
          t('outcome.never')
        ) : (
          <EstimateText estimate={paybackYears} write={years} writeLimit={years} brief />
        ),
    },
    {
      id: 'pays',
      header: t('outcome.pays', { years: format.number(input.horizonYears) }),
      align: 'end',
      sortBy: ({ probabilityPays }) => probabilityPays,
      cell: ({ probabilityPays, reason }) =>
        probabilityPays === null ? <NotComputable reason={reason ?? 'no_cost'} brief /> : format.drawn(probabilityPays),
    },
  ];
  return (
    <DataTable caption={t('outcome.caption')} columns={columns} rows={outcomeRows(result)} rowKey={({ id }) => id} />
  );
};
