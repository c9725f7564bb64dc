import { Anchor, Badge } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { CaseRow } from '#contracts/cases.ts';
import { useFormat } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import { Progress } from './progress.tsx';

interface Props {
  rows: readonly CaseRow[];
  more?: { load: () => void; loading: boolean } | undefined;
}

export const CasesTable = ({ rows, more }: Props) => {
  const { t } = useTranslation('cases');
  const format = useFormat();
  return (
    <DataTable
      caption={t('title')}
      hideCaption
      rows={rows}
      rowKey={({ id }) => id}
      {...(more && { more })}
      columns={[
        {
          id: 'number',
          header: t('number'),
          rowHeader: true,
          phone: 'title',
          nowrap: true,
          cell: ({ id, number }) => (
            <Anchor inherit renderRoot={(props) => <Link {...props} to="/cases/$id" params={{ id }} />}>
              {number}
            </Anchor>
          ),
        },
        {
          id: 'title',
          header: t('caseTitle'),
          cell: ({ title, safety }) => (
            <>
              {title}{' '}
              {safety && (
                <Badge color="red.9" variant="outline">
                  {t('safety')}
                </Badge>
              )}
            </>
          ),
        },
        { id: 'state', header: t('state'), cell: ({ state }) => t(`states.${state}`) },
        { id: 'progress', header: t('signed'), cell: ({ signed }) => <Progress signed={signed} /> },
        { id: 'customer', header: t('customer'), cell: ({ customerCode }) => customerCode ?? '–' },
        { id: 'opened', header: t('opened'), nowrap: true, cell: ({ openedAt }) => format.instant(openedAt) },
      ]}
    />
  );
};
