import { Alert, Badge, Tabs, Text } from '@mantine/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type Discipline, disciplines } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import classes from './cases.module.css';
import { DisciplineView } from './discipline-view.tsx';
import { DocumentPanel } from './document-panel.tsx';
import { HeadSection } from './head-section.tsx';
import { History } from './history.tsx';
import { caseQuery } from './queries.ts';
import { caseRoute } from './routes.ts';
import { useCaseTerms } from './use-case-terms.ts';

export const CasePage = () => {
  const { id } = caseRoute.useParams();
  return (
    <QueryBoundary query={useQuery(caseQuery(id))} height={30}>
      {(it) => <CaseView it={it} />}
    </QueryBoundary>
  );
};

const stateOf = ({ missing, toSignAs }: Case['disciplines'][number]) =>
  toSignAs.length === 0 ? 'signed' : missing.length === 0 ? 'ready' : 'lacking';

const CaseView = ({ it }: { it: Case }) => {
  const { t } = useTranslation('cases');
  const terms = useCaseTerms();
  const format = useFormat();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const { d } = caseRoute.useSearch();
  const mayWrite = useMay('cases.write', it.plantId);
  const [first] = useState(() => it.disciplines.find(({ toSignAs }) => toSignAs.length > 0)?.discipline ?? 0);
  const shown = d ?? first;
  const refresh = () => queries.fetchQuery({ ...caseQuery(it.id), staleTime: 0 });
  return (
    <>
      <PageHead title={`${it.number} ${it.title}`}>
        {t('head', {
          plant: it.plantCode,
          state: t(`states.${it.state}`),
          by: it.openedBy,
          at: format.instant(it.openedAt),
        })}
      </PageHead>
      {it.safety && (
        <Alert color="red.9" variant="outline" title={t('safety')} mb="md">
          {t('safetyCaution')}
        </Alert>
      )}
      {it.dropReason && <Text mb="md">{t('dropped', { reason: it.dropReason })}</Text>}
      <HeadSection it={it} mayWrite={mayWrite && it.state === 'open'} />
      <Tabs
        value={String(shown)}
        onChange={(value) =>
          void navigate({ to: '/cases/$id', params: { id: it.id }, search: { d: Number(value) }, resetScroll: false })
        }
      >
        <Tabs.List className={classes.tabs} aria-label={t('disciplines')}>
          {disciplines.map((discipline) => {
            const state = stateOf(it.disciplines[discipline]!);
            return (
              <Tabs.Tab key={discipline} value={String(discipline)}>
                D{discipline}{' '}
                <Badge
                  size="sm"
                  variant={state === 'signed' ? 'filled' : 'outline'}
                  color={state === 'lacking' ? 'gray.7' : 'petrol'}
                >
                  {t(`progress.${state}`)}
                </Badge>
              </Tabs.Tab>
            );
          })}
          <Tabs.Tab value="9">{terms.part.document}</Tabs.Tab>
        </Tabs.List>
        {disciplines.map((discipline) => (
          <Tabs.Panel key={discipline} value={String(discipline)} pt="md">
            <DisciplineView it={it} discipline={discipline as Discipline} mayWrite={mayWrite} refresh={refresh} />
          </Tabs.Panel>
        ))}
        <Tabs.Panel value="9" pt="md">
          <DocumentPanel it={it} mayWrite={mayWrite && it.state !== 'dropped'} refresh={refresh} />
        </Tabs.Panel>
      </Tabs>
      <History id={it.id} />
    </>
  );
};
