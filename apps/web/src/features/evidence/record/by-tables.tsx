import { useTranslation } from 'react-i18next';
import type { TrackRecord } from '#contracts/evidence.ts';
import { CauseName } from '#web/ui/chart/cause-name.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';

/** The record by confirmed cause and by plant. */
export const ByTables = ({ record: { byCause, byPlant } }: { record: TrackRecord }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const percent = (share: number) => format.percent(share, 0);
  const share = (estimate: TrackRecord['accuracy']) => (
    <EstimateText estimate={estimate} write={percent} writeLimit={percent} brief />
  );
  if (byCause.length === 0) return null;
  return (
    <>
      <DataTable
        caption={t('record.byCause')}
        rows={byCause.toSorted((a, b) => b.cases - a.cases)}
        rowKey={({ cause }) => cause}
        columns={[
          {
            id: 'cause',
            header: t('record.cause'),
            rowHeader: true,
            phone: 'title',
            cell: ({ cause }) => <CauseName cause={cause} />,
          },
          {
            id: 'cases',
            header: t('record.cases'),
            align: 'end',
            sortBy: (row) => row.cases,
            cell: ({ cases }) => format.count(cases),
          },
          {
            id: 'accuracy',
            header: t('record.accuracy'),
            align: 'end',
            sortBy: (row) => row.accuracy.value,
            cell: (row) => share(row.accuracy),
          },
        ]}
      />
      <DataTable
        caption={t('record.byPlant')}
        rows={byPlant.toSorted((a, b) => b.cases - a.cases)}
        rowKey={({ plantId }) => plantId}
        columns={[
          {
            id: 'plant',
            header: t('record.plant'),
            rowHeader: true,
            phone: 'title',
            cell: ({ plantCode }) => plantCode,
          },
          {
            id: 'cases',
            header: t('record.cases'),
            align: 'end',
            sortBy: (row) => row.cases,
            cell: ({ cases }) => format.count(cases),
          },
          {
            id: 'accuracy',
            header: t('record.accuracy'),
            align: 'end',
            sortBy: (row) => row.accuracy.value,
            cell: (row) => share(row.accuracy),
          },
          {
            id: 'baseline',
            header: t('record.baselineShort'),
            align: 'end',
            sortBy: (row) => row.baseline.value,
            cell: (row) => share(row.baseline),
          },
        ]}
      />
    </>
  );
};
