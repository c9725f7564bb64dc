import { Button, Progress, Text } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Import } from '#contracts/imports.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './imports.module.css';
import { useCancel } from './queries.ts';

export const RunningStep = ({ job }: { job: Import }) => {
  const { t } = useTranslation('imports');
  const format = useFormat();
  const cancel = useCancel(job);
  const { phase, share, rows } = job.progress;
  return (
    <section className={classes.running}>
      <Text component="h2" fw={650}>
        {t(`states.${job.state}`)}
      </Text>
      <Text role="status">
        {t(`phase.${phase}`)} · {format.percent(share, 0)}
        {rows > 0 && ` · ${t('rowsRead', { rows: format.count(rows) })}`}
      </Text>
      <Progress value={share * 100} size="lg" aria-label={t(`states.${job.state}`)} />
      <Text size="sm" c="dimmed">
        {t('leave')}
      </Text>
      {cancel.error && <ProblemNote error={cancel.error} />}
      <Button variant="default" loading={cancel.isPending} onClick={() => cancel.mutate(undefined)}>
        {t('stop')}
      </Button>
    </section>
  );
};
