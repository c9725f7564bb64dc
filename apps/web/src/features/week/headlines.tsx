import { useTranslation } from 'react-i18next';
import type { Week } from '#contracts/analyses.ts';
import type { Estimate } from '#contracts/shared/estimate.ts';
import { ChangeText } from '#web/ui/change-text.tsx';
import { IntervalText } from '#web/ui/interval-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { NotComputable } from '#web/ui/not-computable.tsx';
import { AddressLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import classes from './week.module.css';

type Line = Week['headlines'][number];

const isMoney = ({ key }: Line): boolean => key === 'booked' || key === 'estimate';

/** The week's figures as a page of the ledger: one line each, with interval, the week before, and how it moved. */
export const Headlines = ({
  week: { headlines, currency, compared },
}: {
  week: Pick<Week, 'headlines' | 'currency' | 'compared'>;
}) => {
  const { t } = useTranslation('week');
  const format = useFormat();
  const money = (value: number) => ({ amountMinor: Math.round(value), currency });
  const plain = (line: Line) => (value: number) => {
    if (isMoney(line)) return format.moneyShort(money(value));
    return line.key === 'dpmo' ? format.significant(value) : format.count(value);
  };
  const drawn = (line: Line, estimate: Estimate, brief: boolean) => {
    if (estimate.value === null) return <NotComputable reason={estimate.reason} brief />;
    if (!isMoney(line)) return plain(line)(estimate.value);
    return (
      <MoneyText
        money={money(estimate.value)}
        basis={line.key === 'booked' ? 'booked' : 'estimated'}
        short
        named={brief}
      />
    );
  };

  const columns: Column<Line>[] = [
    {
      id: 'label',
      header: t('headlines.what'),
      rowHeader: true,
      phone: 'title',
      cell: ({ key }) => t(`headline.${key}`),
    },
    {
      id: 'figure',
      header: t('headlines.now'),
      align: 'end',
      cell: (line) => (
        <span className={classes.figure}>
          <AddressLink address={`/failures?${line.filter}`}>{drawn(line, line.figure, false)}</AddressLink>
        </span>
      ),
    },
    {
      id: 'interval',
      header: t('headlines.interval'),
      cell: (line) => <IntervalText interval={line.figure.interval} write={plain(line)} />,
    },
    {
      id: 'before',
      header: format.period(compared.from, compared.to),
      align: 'end',
      cell: (line) => drawn(line, line.previous, true),
    },
    { id: 'change', header: t('headlines.change'), cell: ({ change }) => <ChangeText change={change} brief /> },
  ];
  const confidence = headlines.find(({ figure }) => figure.interval)?.figure.interval?.confidence ?? 0.95;
  return (
    <DataTable
      caption={t('headlines.caption', { confidence: format.percent(confidence, 0) })}
      columns={columns}
      rows={headlines}
      rowKey={({ key }) => key}
    />
  );
};
