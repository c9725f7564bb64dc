import { useTranslation } from 'react-i18next';
import type { Charts, Marker } from '#contracts/charts.ts';
import { useFormat } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';

/** What happened, by day, and what is not drawn and why. */
export const MarkerList = ({ data: { markers, left } }: { data: Charts }) => {
  const { t } = useTranslation('charts');
  const format = useFormat();
  const columns: Column<Marker>[] = [
    { id: 'day', header: t('column.day'), rowHeader: true, phone: 'title', cell: ({ day }) => format.day(day) },
    { id: 'kind', header: t('column.what'), cell: ({ kind }) => t(`marker.${kind}`) },
    { id: 'label', header: t('column.name'), cell: ({ label }) => label },
  ];
  return (
    <section>
      {markers.length > 0 && (
        <details>
          <summary>{t('markers', { count: markers.length })}</summary>
          <DataTable
            caption={t('markersTable')}
            columns={columns}
            rows={markers}
            rowKey={({ kind, day, label }) => `${kind} ${day} ${label}`}
          />
        </details>
      )}
      {left.service && <p>{t(`left.service.${left.service}`)}</p>}
      {left.lot && <p>{t(`left.lot.${left.lot}`)}</p>}
    </section>
  );
};
