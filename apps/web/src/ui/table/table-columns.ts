import {
  type ColumnDef,
  createSortedRowModel,
  type RowData,
  rowSortingFeature,
  tableFeatures,
} from '@tanstack/react-table';
import type { ReactNode } from 'react';

export interface Column<Row> {
  readonly id: string;
  readonly header: string;
  /** Shown instead of the text, which stays the spoken name and the label on a card. */
  readonly headerNode?: ReactNode;
  readonly cell: (row: Row) => ReactNode;
  /** Makes the column sortable; null sorts last. */
  readonly sortBy?: (row: Row) => string | number | null;
  /** Figures stand at the end of their cell. */
  readonly align?: 'end';
  /** On a phone: heading of the card, or left out. */
  readonly phone?: 'title' | 'hide';
  readonly rowHeader?: boolean;
  /** Codes and numbers that must not be broken. */
  readonly nowrap?: boolean;
}

export const features = tableFeatures({ rowSortingFeature, sortedRowModel: createSortedRowModel() });

const ascending = (a: unknown, b: unknown): number =>
  typeof a === 'number' && typeof b === 'number'
    ? a - b
    : String(a).localeCompare(String(b), undefined, { numeric: true });

export const tableColumns = <Row extends RowData>(columns: readonly Column<Row>[]): ColumnDef<typeof features, Row>[] =>
  columns.map((column) => ({
    id: column.id,
    accessorFn: (row) => column.sortBy?.(row) ?? undefined,
    enableSorting: column.sortBy !== undefined,
    sortUndefined: 'last',
    sortFn: (a, b, id) => ascending(a.getValue(id), b.getValue(id)),
  }));
