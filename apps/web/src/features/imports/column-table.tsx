import { useTranslation } from 'react-i18next';
import type { FieldName } from '#contracts/import-fields.ts';
import type { Import, Mapping } from '#contracts/imports.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { FieldSelect } from './field-select.tsx';
import classes from './imports.module.css';

interface Props {
  job: Import;
  mapping: Mapping;
  onColumn: (column: number, field: FieldName | null) => void;
}
type Row = Import['columns'][number] & { index: number; name: string };

/** The columns of the file beside what they hold and mean. */
export const ColumnTable = ({ job, mapping, onColumn }: Props) => {
  const { t } = useTranslation('imports');
  const rows: Row[] = job.columns.map((column, index) => ({
    ...column,
    index,
    name: column.header || t('unnamed', { number: index + 1 }),
  }));
  const taken = new Set(mapping.columns.filter((field) => field !== null));
  const columns: Column<Row>[] = [
    { id: 'header', header: t('column'), rowHeader: true, phone: 'title', cell: ({ name }) => name },
    {
      id: 'samples',
      header: t('samples'),
      cell: ({ samples }) =>
        samples.length > 0 ? (
          <span className={classes.samples}>{samples.slice(0, 4).join(' · ')}</span>
        ) : (
          <span className={classes.quiet}>{t('noValues')}</span>
        ),
    },
    {
      id: 'field',
      header: t('means'),
      cell: ({ index, name }) => (
        <FieldSelect
          kind={job.kind}
          column={name}
          value={mapping.columns[index] ?? null}
          onChange={(field) => onColumn(index, field)}
          taken={taken}
        />
      ),
    },
  ];
  return (
    <DataTable
      caption={t('columnsCaption')}
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={({ index }) => String(index)}
    />
  );
};
