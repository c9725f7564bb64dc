import { useTranslation } from 'react-i18next';
import type { Gate, Gates } from '#contracts/gates.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { linksOf } from './links.ts';

export const EffectivenessTable = ({ data, filter }: { data: Gates; filter: FilterValues }) => {
  const { t } = useTranslation('gates');
  const format = useFormat();
  const terms = useTerms();
  const share = (value: number) => format.percent(value, 0);
  const { reason } = data.maturity;
  const count = (gate: Gate, which: 'foundHere' | 'foundLater' | 'fieldBuilt') => (
    <ReportsLink
      filter={linksOf(gate.stage, filter, data)[which]}
      label={t(`table.open.${which}`, { count: gate[which], stage: terms.stage[gate.stage] })}
    >
      {format.count(gate[which])}
    </ReportsLink>
  );
  const columns: Column<Gate>[] = [
    {
      id: 'stage',
      header: t('table.gate'),
      rowHeader: true,
      phone: 'title',
      cell: ({ stage }) => terms.stage[stage],
    },
    { id: 'here', header: t('table.foundHere'), align: 'end', cell: (gate) => count(gate, 'foundHere') },
    { id: 'later', header: t('table.foundLater'), align: 'end', cell: (gate) => count(gate, 'foundLater') },
    {
      id: 'raw',
      header: t('table.raw'),
      align: 'end',
      sortBy: ({ effectiveness }) => effectiveness.value,
      cell: ({ effectiveness }) => <EstimateText estimate={effectiveness} write={share} writeLimit={share} brief />,
    },
    { id: 'field', header: t('table.field'), align: 'end', cell: (gate) => count(gate, 'fieldBuilt') },
    {
      id: 'toCome',
      header: t('table.toCome'),
      align: 'end',
      cell: ({ fieldToCome }) =>
        fieldToCome === null ? (
          <NotComputable reason={reason ?? 'too_few'} brief />
        ) : (
          <em>~ {format.significant(fieldToCome, 2)}</em>
        ),
    },
    {
      id: 'matured',
      header: t('table.matured'),
      align: 'end',
      sortBy: ({ matured }) => matured.value,
      cell: ({ matured }) => <EstimateText estimate={matured} write={share} writeLimit={share} brief />,
    },
  ];
  return <DataTable caption={t('table.caption')} columns={columns} rows={data.gates} rowKey={({ stage }) => stage} />;
};
