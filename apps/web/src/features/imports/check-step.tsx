import { Button, Checkbox, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Import } from '#contracts/imports.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { OutcomeFigures } from './outcome-figures.tsx';
import { useCommit } from './queries.ts';
import { RefusedRows } from './refused-rows.tsx';

/** What the import will do, before it does it. */
export const CheckStep = ({ job }: { job: Import }) => {
  const { t } = useTranslation('imports');
  const format = useFormat();
  const [skipRefused, setSkip] = useState(false);
  const commit = useCommit(job);
  const { outcome } = job;
  if (!outcome) return null;
  const rows = outcome.added + outcome.changed;
  return (
    <Stack gap="lg">
      <Text>{t('planHelp')}</Text>
      <OutcomeFigures outcome={outcome} done={false} />
      {outcome.refused > 0 && rows > 0 && (
        <Checkbox
          label={t('skipRefused', { count: outcome.refused, rows: format.count(outcome.refused) })}
          description={t('allOrNothing')}
          checked={skipRefused}
          onChange={(event) => setSkip(event.currentTarget.checked)}
        />
      )}
      {commit.error && <ProblemNote error={commit.error} />}
      <Group>
        <Button
          loading={commit.isPending}
          disabled={rows === 0 || (outcome.refused > 0 && !skipRefused)}
          onClick={() => commit.mutate(skipRefused)}
        >
          {t('import', { count: rows, rows: format.count(rows) })}
        </Button>
        {rows === 0 && <Text role="status">{t('nothingNew')}</Text>}
      </Group>
      {outcome.refused > 0 && <RefusedRows job={job} outcome={outcome} />}
    </Stack>
  );
};
