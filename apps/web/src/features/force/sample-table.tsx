import { Button, Group, Modal } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { ForceSample } from '#contracts/force.ts';
import { useFormat } from '#web/ui/language.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import classes from './force.module.css';
import { samplesQuery } from './queries.ts';
import { SampleForm } from './sample-form.tsx';
import { VoidSample } from './void-sample.tsx';

/** The samples behind the figures, as entered; one with a value below the minimum leads to the reports of its terminal and tool. */
export const SampleTable = ({ filter }: { filter: object }) => {
  const { t } = useTranslation('force');
  const format = useFormat();
  const person = usePerson();
  const list = useInfiniteQuery(samplesQuery(filter));
  const [correcting, setCorrecting] = useState<ForceSample>();
  const force = (value: number, { unit }: ForceSample) => `${format.significant(value)} ${unit}`;
  return (
    <QueryBoundary query={list} height={20}>
      {({ pages }) => (
        <>
          <DataTable
            caption={t('samples.caption')}
            rows={pages.flatMap(({ items }) => items)}
            rowKey={({ id }) => id}
            more={
              list.hasNextPage ? { load: () => void list.fetchNextPage(), loading: list.isFetchingNextPage } : undefined
            }
            columns={[
              { id: 'day', header: t('day'), rowHeader: true, phone: 'title', cell: (row) => format.day(row.day) },
              { id: 'plant', header: t('plant'), cell: (row) => row.plantCode },
              { id: 'tool', header: t('tool'), cell: (row) => row.toolCode ?? '–' },
              {
                id: 'parts',
                header: t('parts'),
                cell: (row) => [row.housingCode, row.wireCode, row.reference].filter(Boolean).join(' · ') || '–',
              },
              { id: 'values', header: t('values'), align: 'end', cell: (row) => format.count(row.values.length) },
              {
                id: 'smallest',
                header: t('smallest'),
                align: 'end',
                nowrap: true,
                cell: (row) => (
                  <span title={row.values.map((value) => format.number(value)).join('  ')}>
                    {force(Math.min(...row.values), row)}
                  </span>
                ),
              },
              {
                id: 'below',
                header: t('valuesBelow'),
                align: 'end',
                cell: (row) =>
                  row.below === 0 ? (
                    format.count(0)
                  ) : (
                    <>
                      <strong className={classes.bad}>{format.count(row.below)}</strong>{' '}
                      <ReportsLink
                        filter={{
                          plant: [row.plantId],
                          terminal: [row.terminalId],
                          ...(row.toolId && { tool: [row.toolId] }),
                        }}
                        label={t('samples.reportsOf', {
                          terminal: row.terminalCode,
                          tool: row.toolCode ?? t('noTool'),
                        })}
                      >
                        {t('samples.reports')}
                      </ReportsLink>
                    </>
                  ),
              },
              {
                id: 'change',
                header: t('correct'),
                headerNode: <span className="visually-hidden">{t('correct')}</span>,
                align: 'end',
                cell: (row) =>
                  may(person, 'force.write', row.plantId) && (
                    <Group gap="xs" justify="flex-end" wrap="nowrap" className="no-print">
                      <Button
                        variant="subtle"
                        size="compact-md"
                        onClick={() => setCorrecting(row)}
                        aria-label={t('samples.correct', { day: format.day(row.day) })}
                      >
                        {t('correct')}
                      </Button>
                      <VoidSample sample={row} />
                    </Group>
                  ),
              },
            ]}
          />
          <Modal
            opened={correcting !== undefined}
            onClose={() => setCorrecting(undefined)}
            size="xl"
            title={t('samples.correct', { day: correcting ? format.day(correcting.day) : '' })}
            closeButtonProps={{ 'aria-label': t('close') }}
          >
            {correcting && <SampleForm sample={correcting} onDone={() => setCorrecting(undefined)} />}
          </Modal>
        </>
      )}
    </QueryBoundary>
  );
};
