/** Promises, what is overdue, whether the fixes held, and what was decided: all of them actions. */
import type { Decision, ReviewContent } from '#contracts/review-content.ts';
import { useFormat } from '#web/ui/language.ts';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './review.module.css';
import { useReviewWords } from './use-words.ts';

interface Line {
  id: string;
  number: string;
  title: string;
}

const useActionColumns = <Row extends Line>(): Column<Row>[] => {
  const { column } = useReviewWords();
  return [
    {
      id: 'number',
      header: column.number,
      rowHeader: true,
      nowrap: true,
      phone: 'title',
      cell: ({ id, number }) => <AddressLink address={`/actions/${id}`}>{number}</AddressLink>,
    },
    { id: 'what', header: column.what, cell: ({ title }) => title },
  ];
};

const useOwned = <Row extends { owner: string; dueOn: string }>(): Column<Row>[] => {
  const { column } = useReviewWords();
  const format = useFormat();
  return [
    { id: 'owner', header: column.owner, cell: ({ owner }) => owner },
    { id: 'due', header: column.due, nowrap: true, cell: ({ dueOn }) => format.day(dueOn) },
  ];
};

export const Promises = ({ rows }: { rows: ReviewContent['promises'] }) => {
  const words = useReviewWords();
  const columns: Column<ReviewContent['promises'][number]>[] = [
    ...useActionColumns<ReviewContent['promises'][number]>(),
    ...useOwned<ReviewContent['promises'][number]>(),
    {
      id: 'kept',
      header: words.column.kept,
      cell: ({ promise }) => (
        <strong className={classes.state} data-state={promise}>
          {words.promise[promise]}
        </strong>
      ),
    },
  ];
  return <DataTable caption={words.part.promises} hideCaption columns={columns} rows={rows} rowKey={({ id }) => id} />;
};

export const Overdue = ({ actions }: { actions: ReviewContent['actions'] }) => {
  const words = useReviewWords();
  const format = useFormat();
  type Row = ReviewContent['actions']['list'][number];
  const columns: Column<Row>[] = [
    ...useActionColumns<Row>(),
    ...useOwned<Row>(),
    {
      id: 'overdue',
      header: words.column.overdue,
      align: 'end',
      cell: ({ daysOverdue }) => words.said.days(format.count(daysOverdue)),
    },
  ];
  return (
    <DataTable caption={words.part.actions} hideCaption columns={columns} rows={actions.list} rowKey={({ id }) => id} />
  );
};

export const Effects = ({ effects }: { effects: ReviewContent['effects'] }) => {
  const words = useReviewWords();
  const format = useFormat();
  type Row = ReviewContent['effects']['list'][number];
  const columns: Column<Row>[] = [
    ...useActionColumns<Row>(),
    { id: 'since', header: words.column.since, nowrap: true, cell: ({ cleanPoint }) => format.day(cleanPoint) },
    {
      id: 'recurrences',
      header: words.column.recurrences,
      align: 'end',
      cell: ({ recurrences }) => format.count(recurrences),
    },
    {
      id: 'verdict',
      header: words.column.verdict,
      cell: ({ verdict, changed }) => (
        <>
          <strong className={classes.state} data-state={verdict}>
            {words.verdict[verdict]}
          </strong>
          {changed && ` (${words.said.changed})`}
        </>
      ),
    },
  ];
  return (
    <DataTable caption={words.part.effects} hideCaption columns={columns} rows={effects.list} rowKey={({ id }) => id} />
  );
};

export const Decisions = ({ rows }: { rows: readonly Decision[] }) => {
  const words = useReviewWords();
  const columns: Column<Decision>[] = [
    ...useActionColumns<Decision>(),
    { id: 'kind', header: words.column.kind, cell: ({ kind }) => words.kind[kind] },
    ...useOwned<Decision>(),
  ];
  return <DataTable caption={words.part.decisions} hideCaption columns={columns} rows={rows} rowKey={({ id }) => id} />;
};
