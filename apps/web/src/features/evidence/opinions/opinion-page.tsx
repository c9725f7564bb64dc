import { Button, Radio, Stack } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { giveOpinion } from '#contracts/evidence.ts';
import { type Cause, causes } from '#contracts/taxonomy.ts';
import { call } from '#web/ui/http.ts';
import { useTerms } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { ProblemNote } from '#web/ui/problem.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { opinionQuery } from '../queries.ts';
import { opinionRoute } from '../routes.ts';
import { BlindReport } from './blind-report.tsx';

/** A report as a second person sees it, and the opinion they give. */
export const OpinionPage = () => {
  const { t } = useTranslation('evidence');
  const { id } = opinionRoute.useParams();
  const query = useQuery({ ...opinionQuery(id), retry: false });
  return (
    <>
      <PageHead title={t('opinions.blind', { number: query.data?.task.number ?? '…' })}>
        {t('opinions.blindLead')}
      </PageHead>
      <QueryBoundary query={query} height={30}>
        {(report) => (
          <>
            <BlindReport report={report} />
            <OpinionForm id={id} />
          </>
        )}
      </QueryBoundary>
    </>
  );
};

const OpinionForm = ({ id }: { id: string }) => {
  const { t } = useTranslation('evidence');
  const terms = useTerms();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const [cause, setCause] = useState<Cause | ''>('');
  const give = useMutation({
    mutationFn: (chosen: Cause) => call(giveOpinion, { params: { id }, body: { cause: chosen } }),
    onSuccess: async () => {
      notifications.show({ message: t('opinions.given') });
      await navigate({ to: '/evidence/opinions' });
      await Promise.all(['failures', 'evidence'].map((first) => queries.invalidateQueries({ queryKey: [first] })));
    },
  });
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (cause) give.mutate(cause);
      }}
    >
      <Radio.Group label={t('opinions.cause')} size="md" value={cause} onChange={(chosen) => setCause(chosen as Cause)}>
        <Stack gap="xs" my="xs">
          {causes.map((it) => (
            <Radio key={it} value={it} size="md" label={terms.cause[it]} />
          ))}
        </Stack>
      </Radio.Group>
      {give.error && <ProblemNote error={give.error} />}
      <Button type="submit" size="lg" mt="sm" disabled={cause === ''} loading={give.isPending}>
        {t('opinions.submit')}
      </Button>
    </form>
  );
};
