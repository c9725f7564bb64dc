import type { ReviewContent } from '#contracts/review-content.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { useReviewWords } from './use-words.ts';

type Escapes = ReviewContent['escapes'];
type Counted = { key: string; name: string } & Pick<Escapes['passed'][number], 'reports' | 'share' | 'filter'>;

/** How deep faults slipped through, and on which ways most did. */
export const SlippedThrough = ({ escapes: { known, passed, routes } }: { escapes: Escapes }) => {
  const { said, column } = useReviewWords();
  const format = useFormat();
  const terms = useTerms();
  const rows: Counted[] = [
    ...passed.map((it) => ({ ...it, key: `${it.gates}`, name: said.passed(format.count(it.gates)) })),
    ...routes.map((it) => ({
      ...it,
      key: `${it.origin} ${it.found}`,
      name: `${terms.stageShort[it.origin]} → ${terms.stageShort[it.found]}`,
    })),
  ];
  const columns: Column<Counted>[] = [
    { id: 'what', header: column.way, rowHeader: true, phone: 'title', cell: ({ name }) => name },
    {
      id: 'reports',
      header: column.reports,
      align: 'end',
      cell: ({ reports, filter }) => <AddressLink address={`/failures?${filter}`}>{format.count(reports)}</AddressLink>,
    },
    {
      id: 'share',
      header: column.share,
      cell: ({ share }) => (
        <EstimateText
          estimate={share}
          write={(part) => format.percent(part, 0)}
          writeLimit={(part) => format.percent(part, 0)}
          brief
        />
      ),
    },
  ];
  return (
    <DataTable caption={said.ofKnown(format.count(known))} columns={columns} rows={rows} rowKey={({ key }) => key} />
  );
};

/** What each gate finds of what reaches it, as reported and with the field faults still to come. */
export const Gates = ({ escapes: { gates, next } }: { escapes: Escapes }) => {
  const { said, column, part } = useReviewWords();
  const format = useFormat();
  const terms = useTerms();
  type Row = Escapes['gates'][number];
  const share = (value: number) => format.percent(value, 0);
  const columns: Column<Row>[] = [
    { id: 'gate', header: column.gate, rowHeader: true, phone: 'title', cell: ({ stage }) => terms.stage[stage] },
    { id: 'here', header: column.foundHere, align: 'end', cell: ({ foundHere }) => format.count(foundHere) },
    { id: 'later', header: column.foundLater, align: 'end', cell: ({ foundLater }) => format.count(foundLater) },
    {
      id: 'reported',
      header: column.asReported,
      cell: ({ effectiveness }) => <EstimateText estimate={effectiveness} write={share} writeLimit={share} brief />,
    },
    {
      id: 'matured',
      header: column.withField,
      cell: ({ matured }) => (
        <EstimateText estimate={matured} write={(value) => `~ ${share(value)}`} writeLimit={share} brief />
      ),
    },
  ];
  const candidates = next.candidates.map((stage) => terms.stage[stage]);
  return (
    <>
      <DataTable caption={part.gates} hideCaption columns={columns} rows={gates} rowKey={({ stage }) => stage} />
      <p>
        <strong>
          {next.stage
            ? said.next(terms.stage[next.stage])
            : candidates.length > 0
              ? said.between(format.list(candidates))
              : said.notYet}
        </strong>
      </p>
    </>
  );
};
