import { IconArrowDown, IconArrowsVertical, IconArrowUp } from '@tabler/icons-react';
import classes from './data-table.module.css';
import type { Column } from './table-columns.ts';

interface Props<Row> {
  column: Column<Row>;
  sorted: false | 'asc' | 'desc';
  onSort?: () => void;
}

const spoken = { asc: 'ascending', desc: 'descending' } as const;
const icons = { asc: IconArrowUp, desc: IconArrowDown };

export const TableHeader = <Row,>({ column, sorted, onSort }: Props<Row>) => {
  const Icon = sorted ? icons[sorted] : IconArrowsVertical;
  return (
    <th
      scope="col"
      data-align={column.align}
      data-phone={column.phone}
      aria-sort={onSort ? (sorted ? spoken[sorted] : 'none') : undefined}
    >
      {onSort ? (
        <button type="button" className={classes.sort} data-sorted={sorted || undefined} onClick={onSort}>
          {column.headerNode ?? column.header}
          <Icon size={14} aria-hidden />
        </button>
      ) : (
        (column.headerNode ?? column.header)
      )}
    </th>
  );
};
