import type { ReviewContent } from '#contracts/review-content.ts';
import { useFormat } from '#web/ui/language.ts';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './review.module.css';
import { useReviewWords } from './use-words.ts';

type Row = ReviewContent['complaints']['list'][number];

export const Complaints = ({ content: { complaints, places } }: { content: ReviewContent }) => {
  const { column, said, reply, clock, part } = useReviewWords();
  const format = useFormat();
  const zoneOf = (code: string) => places.find((place) => place.code === code)?.zone;
  const columns: Column<Row>[] = [
    {
      id: 'number',
      header: column.complaint,
      rowHeader: true,
      nowrap: true,
      phone: 'title',
      cell: ({ id, number }) => <AddressLink address={`/complaints/${id}`}>{number}</AddressLink>,
    },
    { id: 'customer', header: column.customer, cell: ({ customerCode }) => customerCode },
    {
      id: 'what',
      header: column.what,
      cell: ({ title, safety }) => (
        <>
          {title}
          {safety && <strong className={classes.state} data-state="broken">{` (${said.safety})`}</strong>}
        </>
      ),
    },
    {
      id: 'next',
      header: column.next,
      cell: ({ next, plantCode }) =>
        next ? (
          <>
            {reply[next.kind]}, {format.instant(next.dueAt, zoneOf(plantCode))}, {next.ownerName}{' '}
            <strong className={classes.state} data-state={next.state}>
              {clock[next.state]}
            </strong>
          </>
        ) : (
          '–'
        ),
    },
  ];
  const { open, overdue, short, paused, safetyUnseen, list } = complaints;
  return (
    <>
      <p>{said.complaints(format.count(open), format.count(overdue), format.count(short), format.count(paused))}</p>
      {safetyUnseen > 0 && (
        <p>
          <strong className={classes.state} data-state="broken">
            {said.safetyUnseen(format.count(safetyUnseen))}
          </strong>
        </p>
      )}
      <DataTable caption={part.complaints} hideCaption columns={columns} rows={list} rowKey={({ id }) => id} />
      {open > list.length && (
        <AddressLink address="/complaints">{said.more(format.count(open - list.length))}</AddressLink>
      )}
    </>
  );
};
