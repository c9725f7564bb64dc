import { useTranslation } from 'react-i18next';
import type { Rates } from '#contracts/analyses.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';

type Figures = Pick<Rates['overall'], 'reports' | 'terminals' | 'exposureTerminals' | 'exposureUnits' | 'dpmo' | 'ppm'>;

export interface RateRow extends Figures {
  readonly key: string;
  readonly name: string;
  /** Opens its reports. */
  readonly filter: FilterValues;
}

interface Props {
  caption: string;
  first: string;
  rows: readonly RateRow[];
}

export const RateTable = ({ caption, first, rows }: Props) => {
  const { t } = useTranslation('causes');
  const format = useFormat();
  const columns: Column<RateRow>[] = [
    { id: 'name', header: first, rowHeader: true, phone: 'title', cell: ({ name }) => name },
    {
      id: 'reports',
      header: t('column.reports'),
      align: 'end',
      cell: ({ reports, filter }) => <ReportsLink filter={filter}>{format.count(reports)}</ReportsLink>,
    },
    {
      id: 'terminals',
      header: t('column.terminals'),
      align: 'end',
      cell: ({ terminals }) => format.count(terminals),
    },
    {
      id: 'exposure',
      header: t('rate.exposure'),
      align: 'end',
      cell: ({ exposureTerminals }) => format.count(exposureTerminals),
    },
    {
      id: 'dpmo',
      header: t('column.rate'),
      align: 'end',
      sortBy: ({ dpmo }) => dpmo.value,
      cell: ({ dpmo }) => <EstimateText estimate={dpmo} brief />,
    },
    {
      id: 'ppm',
      header: t('rate.ppm'),
      align: 'end',
      sortBy: ({ ppm }) => ppm.value,
      cell: ({ ppm }) => <EstimateText estimate={ppm} brief />,
    },
  ];
  return <DataTable caption={caption} columns={columns} rows={rows} rowKey={({ key }) => key} />;
};
