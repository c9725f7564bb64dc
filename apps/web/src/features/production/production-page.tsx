import { Button } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Production } from '#contracts/production.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { PeriodPicker } from '#web/ui/filter/period-picker.tsx';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { may, useMay, usePerson } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { CorrectionForm } from './correction-form.tsx';
import { EntryForm } from './entry-form.tsx';
import classes from './production.module.css';
import { productionQuery } from './queries.ts';
import { productionRoute } from './routes.ts';

export const ProductionPage = () => {
  const { t } = useTranslation('production');
  const filter = productionRoute.useSearch();
  const list = useInfiniteQuery(productionQuery(filter));
  const mayWrite = useMay('production.write');
  const [entering, setEntering] = useState(false);
  const [correcting, setCorrecting] = useState<Production>();
  const columns = useColumns(setCorrecting);

  return (
    <>
      <PageHead
        title={t('title')}
        aside={mayWrite && !entering && <Button onClick={() => setEntering(true)}>{t('enter')}</Button>}
      >
        {t('lead')}
      </PageHead>
      {entering && <EntryForm onDone={() => setEntering(false)} />}
      <section className={classes.filter} aria-label={t('filter')}>
        <PeriodPicker />
        <PlantPicker />
      </section>
      <QueryBoundary
        query={list}
        height={30}
        isEmpty={({ pages }) => pages[0]?.items.length === 0}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {({ pages }) => (
          <DataTable
            caption={t('caption')}
            hideCaption
            columns={columns}
            rows={pages.flatMap(({ items }) => items)}
            rowKey={(row) => row.id}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
          />
        )}
      </QueryBoundary>
      {correcting && <CorrectionForm row={correcting} onDone={() => setCorrecting(undefined)} />}
    </>
  );
};

const useColumns = (onCorrect: (row: Production) => void): readonly Column<Production>[] => {
  const { t } = useTranslation('production');
  const format = useFormat();
  const person = usePerson();
  const quiet = <span className={classes.quiet}>{t('all')}</span>;
  return [
    { id: 'day', header: t('day'), rowHeader: true, phone: 'title', cell: (row) => format.day(row.day) },
    { id: 'plant', header: t('plant'), cell: (row) => row.plantCode },
    { id: 'line', header: t('line'), cell: (row) => row.lineCode ?? quiet },
    { id: 'housing', header: t('housing'), cell: (row) => row.housingCode ?? quiet },
    { id: 'terminal', header: t('terminal'), cell: (row) => row.terminalCode ?? quiet },
    { id: 'units', header: t('units'), align: 'end', cell: (row) => format.count(row.units) },
    { id: 'terminals', header: t('terminals'), align: 'end', cell: (row) => format.count(row.terminals) },
    {
      id: 'correct',
      header: t('correct'),
      headerNode: <span className="visually-hidden">{t('correct')}</span>,
      align: 'end',
      cell: (row) =>
        may(person, 'production.write', row.plantId) && (
          <Button
            variant="subtle"
            size="compact-md"
            className="no-print"
            onClick={() => onCorrect(row)}
            aria-label={t('correctRow', { day: format.day(row.day), plant: row.plantCode })}
          >
            {t('correct')}
          </Button>
        ),
    },
  ];
};
