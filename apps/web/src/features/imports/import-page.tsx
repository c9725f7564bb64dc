import { Alert, Group } from '@mantine/core';
import { IconInfoCircle } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import type { Import } from '#contracts/imports.ts';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { CheckStep } from './check-step.tsx';
import { ColumnsStep } from './columns-step.tsx';
import { importQuery, useCancel, useImportTerms } from './queries.ts';
import { ResultStep } from './result-step.tsx';
import { importRoute } from './routes.ts';
import { RunningStep } from './running-step.tsx';
import { StepBar } from './step-bar.tsx';
import { dueStep, isFinished, isRunning, openSteps, type Step } from './steps.ts';
import { ValuesStep } from './values-step.tsx';

export const ImportPage = () => {
  const { t } = useTranslation('imports');
  const { id } = importRoute.useParams();
  const query = useQuery(importQuery(id));
  const terms = useTerms();
  const format = useFormat();
  return (
    <>
      <PageHead
        title={query.data?.fileName ?? t('one')}
        aside={query.data && !isFinished(query.data) && !isRunning(query.data) && <GiveUp job={query.data} />}
      >
        {query.data &&
          t('about', {
            kind: terms.importKind[query.data.kind],
            source: query.data.source,
            size: format.count(Math.ceil(query.data.bytes / 1024)),
            by: query.data.createdBy,
            at: format.instant(query.data.createdAt),
          })}
      </PageHead>
      <QueryBoundary query={query} height={30}>
        {(job) => <Steps job={job} />}
      </QueryBoundary>
    </>
  );
};

const views: Record<Step, (props: { job: Import }) => React.ReactNode> = {
  columns: ColumnsStep,
  values: ValuesStep,
  check: CheckStep,
  result: ResultStep,
};

const Steps = ({ job }: { job: Import }) => {
  const { step: asked } = importRoute.useSearch();
  const terms = useImportTerms();
  const open = openSteps(job);
  const step = asked && open.includes(asked) ? asked : dueStep(job);
  const View = views[step];
  if (isRunning(job)) return <RunningStep job={job} />;
  return (
    <>
      <StepBar job={job} step={step} />
      {job.trouble && (
        <Alert role="alert" color="red.9" variant="outline" icon={<IconInfoCircle aria-hidden />} mb="md">
          {terms.trouble[job.trouble.code]} {job.trouble.place}
        </Alert>
      )}
      <View key={`${job.id} ${job.version}`} job={job} />
    </>
  );
};

const GiveUp = ({ job }: { job: Import }) => {
  const { t } = useTranslation('imports');
  const cancel = useCancel(job);
  return (
    <Group>
      <ConfirmButton
        question={t('giveUpQuestion')}
        confirm={t('giveUp')}
        onConfirm={() => cancel.mutateAsync(undefined)}
        pending={cancel.isPending}
        error={cancel.error}
      >
        {t('giveUp')}
      </ConfirmButton>
    </Group>
  );
};
