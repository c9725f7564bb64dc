import { ActionIcon, Button } from '@mantine/core';
import { IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type CostItem, type Report, removeCost } from '#contracts/failures.ts';
import { costBases } from '#contracts/taxonomy.ts';
import { call } from '#web/ui/http.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { ProblemNote } from '#web/ui/problem.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { useReportWrite } from '../queries.ts';
import { CostForm } from './cost-form.tsx';
import classes from './report.module.css';

/** Booked and estimated costs, each with its own sum; the two are never added up. */
export const CostsPanel = ({ report, mayWrite }: { report: Report; mayWrite: boolean }) => {
  const { t } = useTranslation('failures');
  const terms = useTerms();
  const [adding, setAdding] = useState(false);
  const { currency, standardMinor } = report.cost;
  const sums = { booked: report.cost.bookedMinor, estimated: report.cost.estimatedMinor };
  const bases = costBases.filter((basis) => report.costItems.some((item) => item.basis === basis));

  return (
    <section aria-labelledby="costs">
      <h2 id="costs" className={classes.heading}>
        {t('cost.title')}
      </h2>
      {bases.map((basis) => (
        <CostTable
          key={basis}
          report={report}
          basis={basis}
          caption={terms.costBasis[basis]}
          sum={sums[basis]}
          mayWrite={mayWrite}
        />
      ))}
      {bases.length === 0 && (
        <p className={classes.quiet}>
          {t('cost.none')}{' '}
          {standardMinor !== null && (
            <>
              {t('cost.standard')} <MoneyText money={{ amountMinor: standardMinor, currency }} basis="estimated" />
            </>
          )}
        </p>
      )}
      {mayWrite &&
        (adding ? (
          <CostForm report={report} onDone={() => setAdding(false)} />
        ) : (
          <Button variant="default" className="no-print" onClick={() => setAdding(true)}>
            {t('cost.add')}
          </Button>
        ))}
    </section>
  );
};

interface TableProps {
  report: Report;
  basis: CostItem['basis'];
  caption: string;
  sum: number;
  mayWrite: boolean;
}

const CostTable = ({ report, basis, caption, sum, mayWrite }: TableProps) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const terms = useTerms();
  const { currency } = report.cost;
  const remove = useReportWrite((costId: string) => call(removeCost, { params: { id: report.id, costId } }));
  const money = (amountMinor: number) => <MoneyText money={{ amountMinor, currency }} basis={basis} named />;
  const origin = (item: CostItem) =>
    [
      item.minutes !== null && t('cost.minutes', { count: item.minutes, text: format.count(item.minutes) }),
      item.currency !== currency && format.money({ amountMinor: item.amountMinor, currency: item.currency }),
      item.rateOn && t('cost.rateOn', { day: format.day(item.rateOn) }),
      item.note,
    ].filter(Boolean);

  const columns: Column<CostItem>[] = [
    {
      id: 'category',
      header: t('cost.category'),
      rowHeader: true,
      phone: 'title',
      cell: (item) => terms.costCategory[item.category],
    },
    { id: 'day', header: t('cost.day'), cell: (item) => format.day(item.incurredOn) },
    { id: 'origin', header: t('cost.origin'), cell: (item) => origin(item).join(' · ') },
    { id: 'amount', header: t('cost.amount'), align: 'end', cell: (item) => money(item.plantMinor) },
    ...(mayWrite
      ? [
          {
            id: 'remove',
            header: t('cost.remove'),
            headerNode: <span className="visually-hidden">{t('cost.remove')}</span>,
            cell: (item: CostItem) => (
              <ActionIcon
                variant="subtle"
                size="lg"
                className="no-print"
                aria-label={t('cost.removeItem', { category: terms.costCategory[item.category] })}
                onClick={() => remove.mutate(item.id)}
                loading={remove.isPending && remove.variables === item.id}
              >
                <IconTrash size={18} aria-hidden />
              </ActionIcon>
            ),
          },
        ]
      : []),
  ];
  return (
    <>
      <DataTable
        caption={caption}
        columns={columns}
        rows={report.costItems.filter((item) => item.basis === basis)}
        rowKey={(item) => item.id}
        footers={[{ category: t('cost.sum'), amount: money(sum) }]}
      />
      {remove.error && <ProblemNote error={remove.error} />}
    </>
  );
};
