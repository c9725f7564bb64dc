/** A real table: caption, scopes, sort state. On a phone every row becomes a card; long tables draw only the rows in view. */
import { Button } from '@mantine/core';
import { useTable } from '@tanstack/react-table';
import { type ReactNode, useMemo, useRef } from 'react';
import { useTranslation } from 'react-i18next';
import classes from './data-table.module.css';
import { type Column, features, tableColumns } from './table-columns.ts';
import { TableHeader } from './table-header.tsx';
import { useRowsInView } from './use-rows-in-view.ts';

interface Props<Row extends object> {
  caption: string;
  /** The caption is spoken but not drawn, where a heading says the same. */
  hideCaption?: boolean;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  /** Rows of sums, each with its cells by column id. */
  footers?: readonly Partial<Record<string, ReactNode>>[];
  /** The list goes on: loads the next page of a keyset cursor. */
  more?: { load: () => void; loading: boolean };
  rowClass?: (row: Row) => string | undefined;
}

export const DataTable = <Row extends object>({
  caption,
  hideCaption,
  columns,
  rows,
  rowKey,
  footers,
  more,
  rowClass,
}: Props<Row>) => {
  const { t } = useTranslation('ui');
  const body = useRef<HTMLTableSectionElement>(null);
  const definitions = useMemo(() => tableColumns(columns), [columns]);
  const data = useMemo(() => [...rows], [rows]);
  const table = useTable({ features, columns: definitions, data, getRowId: rowKey, enableMultiSort: false });
  const sorted = table.getRowModel().rows;
  const { visible, above, below, measure } = useRowsInView(sorted, body);
  const spacer = (height: number, place: string) =>
    height > 0 && (
      <tr aria-hidden key={place}>
        <td colSpan={columns.length} style={{ height, padding: 0, border: 0 }} />
      </tr>
    );

  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys scroll it where it is wider than the page
    <div className={classes.frame} tabIndex={0}>
      <table className={classes.table} aria-rowcount={more ? -1 : sorted.length + 1}>
        <caption className={hideCaption ? 'visually-hidden' : undefined}>{caption}</caption>
        <thead>
          <tr>
            {table.getFlatHeaders().map((header) => (
              <TableHeader
                key={header.id}
                column={columns[header.index]!}
                sorted={header.column.getIsSorted()}
                onSort={header.column.getCanSort() ? () => header.column.toggleSorting() : undefined}
              />
            ))}
          </tr>
        </thead>
        <tbody ref={body}>
          {spacer(above, 'above')}
          {visible.map(({ row, index }) => (
            <tr
              key={row.id}
              ref={measure}
              data-index={index}
              aria-rowindex={index + 2}
              className={rowClass?.(row.original)}
            >
              {columns.map((column) => {
                const Cell = column.rowHeader ? 'th' : 'td';
                return (
                  <Cell
                    key={column.id}
                    scope={column.rowHeader ? 'row' : undefined}
                    data-align={column.align}
                    data-phone={column.phone}
                    data-nowrap={column.nowrap || undefined}
                    data-label={column.header}
                  >
                    <div className={classes.value}>{column.cell(row.original)}</div>
                  </Cell>
                );
              })}
            </tr>
          ))}
          {spacer(below, 'below')}
        </tbody>
        {footers && (
          <tfoot>
            {footers.map((cells, place) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: sums have no identity but their place
              <tr key={place}>
                {columns.map((column) => (
                  <td key={column.id} data-align={column.align} data-label={column.header} data-phone={column.phone}>
                    {cells[column.id]}
                  </td>
                ))}
              </tr>
            ))}
          </tfoot>
        )}
      </table>
      {more && (
        <Button variant="default" mt="sm" className="no-print" onClick={more.load} loading={more.loading}>
          {t('table.more')}
        </Button>
      )}
    </div>
  );
};
