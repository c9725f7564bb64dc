import { Anchor } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { useFormat } from '#web/ui/language.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import { casesQuery } from '../queries.ts';

/** The reports behind a number of the confusion table. */
export const CaseList = ({ query }: { query: Parameters<typeof casesQuery>[0] }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const cases = useQuery(casesQuery(query));
  return (
    <QueryBoundary query={cases}>
      {(rows) => (
        <DataTable
          caption={t('record.casesCaption')}
          rows={rows}
          rowKey={({ failureId }) => failureId}
          columns={[
            {
              id: 'report',
              header: t('record.report'),
              rowHeader: true,
              phone: 'title',
              nowrap: true,
              cell: ({ failureId, number }) => (
                <Anchor
                  inherit
                  renderRoot={(props) => <Link {...props} to="/failures/$id" params={{ id: failureId }} />}
                >
                  {number}
                </Anchor>
              ),
            },
            { id: 'plant', header: t('record.plant'), cell: ({ plantCode }) => plantCode },
            {
              id: 'gave',
              header: t('record.gave'),
              align: 'end',
              sortBy: (row) => row.probability,
              cell: ({ probability }) => format.chance(probability),
            },
            { id: 'decided', header: t('record.decided'), cell: ({ at }) => format.instant(at) },
          ]}
        />
      )}
    </QueryBoundary>
  );
};
