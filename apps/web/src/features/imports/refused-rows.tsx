import { Anchor, List, Stack, Text, Title } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { type Import, type Outcome, type RefusedRow, readRefused } from '#contracts/imports.ts';
import { addressOf } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { useImportTerms } from './queries.ts';

/** Why rows are refused, the first of them, and all of them as a file. */
export const RefusedRows = ({ job, outcome }: { job: Import; outcome: Outcome }) => {
  const { t } = useTranslation('imports');
  const terms = useImportTerms();
  const format = useFormat();
  const columns: Column<RefusedRow & { key: string }>[] = [
    {
      id: 'line',
      header: t('line'),
      rowHeader: true,
      phone: 'title',
      cell: ({ line }) => format.count(line),
    },
    { id: 'column', header: t('column'), cell: ({ column }) => column },
    { id: 'value', header: t('value'), cell: ({ value }) => value },
    {
      id: 'reason',
      header: t('reason'),
      cell: ({ reason, note }) => terms.reason[reason] + (note ? ` (${note})` : ''),
    },
  ];
  const rows = outcome.firstRefused.map((row, at) => ({ ...row, key: `${row.line} ${at}` }));
  return (
    <Stack component="section">
      <Title order={2}>{t('refusedTitle')}</Title>
      <List>
        {outcome.reasons.map(({ reason, rows: count }) => (
          <List.Item key={reason}>
            {terms.reason[reason]}: {t('rowCount', { count, rows: format.count(count) })}
          </List.Item>
        ))}
      </List>
      <Text>
        <Anchor href={addressOf(readRefused, { params: { id: job.id } })} download>
          {t('download')}
        </Anchor>
      </Text>
      <DataTable
        caption={t('firstRefused', { count: rows.length })}
        columns={columns}
        rows={rows}
        rowKey={({ key }) => key}
      />
    </Stack>
  );
};
