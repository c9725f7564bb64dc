import { Button, Group } from '@mantine/core';
import { IconDownload } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import { exportReports } from '#contracts/failures.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { addressOf } from '#web/ui/http.ts';

const formats = ['csv', 'xlsx'] as const;

/** Exactly the list shown, as a file. */
export const ExportLinks = ({ filter }: { filter: Partial<Filter> }) => {
  const { t } = useTranslation('failures');
  return (
    <Group gap="xs" className="no-print">
      {formats.map((format) => (
        <Button
          key={format}
          component="a"
          href={addressOf(exportReports, { query: { ...filter, format } })}
          download
          variant="default"
          leftSection={<IconDownload size={16} aria-hidden />}
          aria-label={t('list.export', { format: format.toUpperCase() })}
        >
          {format.toUpperCase()}
        </Button>
      ))}
    </Group>
  );
};
