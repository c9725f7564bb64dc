import { Anchor, Stack, Text } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Import } from '#contracts/imports.ts';
import { useFormat } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import { OutcomeFigures } from './outcome-figures.tsx';
import { RefusedRows } from './refused-rows.tsx';
import { importsRoute } from './routes.ts';

export const ResultStep = ({ job }: { job: Import }) => {
  const { t } = useTranslation('imports');
  const format = useFormat();
  const plants = new Map(usePlants().map((plant) => [plant.id, plant.code]));
  const { outcome } = job;
  const back = <Anchor renderRoot={(props) => <Link {...props} to={importsRoute.to} />}>{t('back')}</Anchor>;
  if (job.state === 'cancelled' || !outcome)
    return (
      <Stack>
        <Text>{t('givenUp')}</Text>
        {back}
      </Stack>
    );
  return (
    <Stack gap="lg">
      <Text role="status">{t('imported', { at: job.finishedAt ? format.instant(job.finishedAt) : '' })}</Text>
      <OutcomeFigures outcome={outcome} done />
      {job.kind === 'failures' && (
        <Text>
          <ReportsLink filter={{ import: job.id }}>{t('openReports')}</ReportsLink>
        </Text>
      )}
      <DataTable
        caption={t('byPlant')}
        rows={outcome.plants}
        rowKey={({ plantId }) => plantId}
        columns={[
          {
            id: 'plant',
            header: t('plant'),
            rowHeader: true,
            phone: 'title',
            cell: ({ plantId }) => plants.get(plantId) ?? '',
          },
          { id: 'added', header: t('done.added'), align: 'end', cell: ({ added }) => format.count(added) },
          { id: 'changed', header: t('done.changed'), align: 'end', cell: ({ changed }) => format.count(changed) },
          { id: 'skipped', header: t('done.skipped'), align: 'end', cell: ({ skipped }) => format.count(skipped) },
        ]}
      />
      {outcome.refused > 0 && <RefusedRows job={job} outcome={outcome} />}
      {back}
    </Stack>
  );
};
