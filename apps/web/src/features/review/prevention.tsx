import type { ReviewContent } from '#contracts/review-content.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { useReviewWords } from './use-words.ts';

type Row = ReviewContent['prevention'][number];

export const Prevention = ({ rows }: { rows: readonly Row[] }) => {
  const { column, said, part } = useReviewWords();
  const format = useFormat();
  const money = (currency: string) => (value: number) =>
    format.moneyShort({ amountMinor: Math.round(value), currency });
  const years = (value: number) => format.significant(value, 2);
  const columns: Column<Row>[] = [
    {
      id: 'option',
      header: column.option,
      rowHeader: true,
      phone: 'title',
      cell: ({ id, plantCode, name }) => (
        <AddressLink address={`/what-if/${id}`}>{`${plantCode}: ${name}`}</AddressLink>
      ),
    },
    {
      id: 'net',
      header: column.perYear,
      cell: ({ netPerYear, currency }) => (
        <em>
          <EstimateText
            estimate={netPerYear}
            write={(value) => `~ ${money(currency)(value)}`}
            writeLimit={money(currency)}
            brief
          />
        </em>
      ),
    },
    {
      id: 'payback',
      header: column.payback,
      cell: ({ paybackYears }) => (
        <EstimateText
          estimate={paybackYears}
          write={(value) => said.years(`~ ${years(value)}`)}
          writeLimit={years}
          brief
        />
      ),
    },
    {
      id: 'pays',
      header: column.pays,
      align: 'end',
      cell: ({ probabilityPays }) => (probabilityPays === null ? '–' : format.chance(probabilityPays)),
    },
  ];
  return <DataTable caption={part.prevention} hideCaption columns={columns} rows={rows} rowKey={({ id }) => id} />;
};
