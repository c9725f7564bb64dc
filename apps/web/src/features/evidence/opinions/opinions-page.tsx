import { Anchor, Button } from '@mantine/core';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { z } from 'zod';
import { type OpinionTask, takeOpinion } from '#contracts/evidence.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { ProblemNote } from '#web/ui/problem.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import { opinionsQuery } from '../queries.ts';
import { AskForm } from './ask-form.tsx';

type Task = z.infer<typeof OpinionTask>;

/** Second opinions: those that wait for me, and asking for more. */
export const OpinionsPage = () => {
  const { t } = useTranslation('evidence');
  const query = useQuery(opinionsQuery);
  return (
    <>
      <PageHead title={t('opinions.title')}>{t('opinions.lead')}</PageHead>
      <h2>{t('opinions.mine')}</h2>
      <QueryBoundary
        query={query}
        isEmpty={(tasks) => tasks.length === 0}
        empty={<EmptyNote title={t('opinions.nothing')}>{t('opinions.nothingText')}</EmptyNote>}
      >
        {(tasks) => <TaskTable tasks={tasks} />}
      </QueryBoundary>
      <h2>{t('opinions.ask')}</h2>
      <AskForm />
    </>
  );
};

const TaskTable = ({ tasks }: { tasks: readonly Task[] }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  return (
    <DataTable
      caption={t('opinions.mine')}
      hideCaption
      rows={tasks}
      rowKey={({ id }) => id}
      columns={[
        {
          id: 'report',
          header: t('opinions.report'),
          rowHeader: true,
          phone: 'title',
          nowrap: true,
          cell: ({ number }) => number ?? t('opinions.notTold'),
        },
        {
          id: 'plant',
          header: t('opinions.plant'),
          sortBy: (row) => row.plantCode,
          cell: ({ plantCode }) => plantCode,
        },
        { id: 'asked', header: t('opinions.asked'), cell: ({ askedAt }) => format.instant(askedAt) },
        {
          id: 'give',
          header: t('opinions.give'),
          cell: (task) => <GiveLink task={task} />,
        },
      ]}
    />
  );
};

/** One that is taken opens; another is taken first, which hides its report's cause from me. */
const GiveLink = ({ task: { id, number } }: { task: Task }) => {
  const { t } = useTranslation('evidence');
  const navigate = useNavigate();
  const queries = useQueryClient();
  const take = useMutation({
    mutationFn: () => call(takeOpinion, { params: { id } }),
    onSuccess: async () => {
      await navigate({ to: '/evidence/opinions/$id', params: { id } });
      await Promise.all(['failures', 'evidence'].map((first) => queries.invalidateQueries({ queryKey: [first] })));
    },
  });
  if (number !== null)
    return (
      <Anchor
        inherit
        aria-label={t('opinions.giveOn', { number })}
        renderRoot={(props) => <Link {...props} to="/evidence/opinions/$id" params={{ id }} />}
      >
        {t('opinions.give')}
      </Anchor>
    );
  return (
    <>
      <Button variant="default" size="compact-md" loading={take.isPending} onClick={() => take.mutate()}>
        {t('opinions.take')}
      </Button>
      {take.error && <ProblemNote error={take.error} />}
    </>
  );
};
