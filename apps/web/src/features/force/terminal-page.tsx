import { Anchor, Button, SegmentedControl } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type ForceKind, forceKinds } from '#contracts/taxonomy.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { PeriodPicker } from '#web/ui/filter/period-picker.tsx';
import { PlantPicker } from '#web/ui/filter/plant-picker.tsx';
import { useTerms } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import classes from './force.module.css';
import { detailQuery } from './queries.ts';
import { forceTerminalRoute } from './routes.ts';
import { SampleForm } from './sample-form.tsx';
import { SampleTable } from './sample-table.tsx';
import { TerminalView } from './terminal-view.tsx';

/** One terminal's forces: what they say of all terminals like these, by tool and over time, and the samples themselves. */
export const TerminalPage = () => {
  const { t } = useTranslation('force');
  const terms = useTerms();
  const { id } = forceTerminalRoute.useParams();
  const search = forceTerminalRoute.useSearch();
  const filter = { ...search, kind: search.kind ?? ('retention' as ForceKind) };
  const navigate = useNavigate();
  const detail = useQuery(detailQuery(id, filter));
  const mayWrite = useMay('force.write');
  const [entering, setEntering] = useState(false);
  const go = (patch: Partial<typeof search>) =>
    void navigate({ to: '/force/$id', params: { id }, search: { ...search, ...patch } });
  return (
    <>
      <PageHead
        title={t('titleOf', { terminal: detail.data?.terminal.code ?? '…', kind: terms.forceKind[filter.kind] })}
        aside={mayWrite && !entering && <Button onClick={() => setEntering(true)}>{t('enter')}</Button>}
      >
        {detail.data?.terminal.name} ·{' '}
        <Anchor inherit renderRoot={(props) => <Link {...props} to="/force" />}>
          {t('all')}
        </Anchor>{' '}
        ·{' '}
        <ReportsLink filter={{ terminal: [id], ...(filter.tool && { tool: filter.tool }) }}>{t('reports')}</ReportsLink>
      </PageHead>
      {entering && <SampleForm terminalId={id} kind={filter.kind} onDone={() => setEntering(false)} />}
      <section className={classes.filter} aria-label={t('filter')}>
        {detail.data ? <PeriodPicker shown={detail.data.period} /> : <PeriodPicker />}
        <PlantPicker />
        <SegmentedControl
          aria-label={t('kind')}
          className="no-print"
          value={filter.kind}
          onChange={(kind) => go({ kind: kind as ForceKind })}
          data={forceKinds.map((kind) => ({ value: kind, label: terms.forceKind[kind] }))}
        />
        {filter.tool && (
          <Button variant="subtle" size="compact-md" className="no-print" onClick={() => go({ tool: undefined })}>
            {t('allTools')}
          </Button>
        )}
      </section>
      <QueryBoundary
        query={detail}
        height={40}
        isEmpty={({ whole }) => whole === null}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {(data) => (
          <>
            <TerminalView detail={data} onTool={(tool) => go({ tool: [tool] })} />
            <SampleTable filter={{ ...filter, ...data.period, terminal: [id] }} />
          </>
        )}
      </QueryBoundary>
    </>
  );
};
