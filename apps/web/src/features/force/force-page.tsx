import { Button, SegmentedControl } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
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
import classes from './force.module.css';
import { GroupTable } from './group-table.tsx';
import { overviewQuery } from './queries.ts';
import { forceRoute } from './routes.ts';
import { SampleForm } from './sample-form.tsx';

/** Every measured terminal against its minimum, those in most need first. */
export const ForcePage = () => {
  const { t } = useTranslation('force');
  const terms = useTerms();
  const filter = forceRoute.useSearch();
  const navigate = useNavigate();
  const overview = useQuery(overviewQuery(filter));
  const mayWrite = useMay('force.write');
  const [entering, setEntering] = useState(false);
  const choose = (kind: string) =>
    void navigate({ to: '/force', search: { ...filter, kind: kind === 'all' ? undefined : (kind as ForceKind) } });
  return (
    <>
      <PageHead
        title={t('title')}
        aside={mayWrite && !entering && <Button onClick={() => setEntering(true)}>{t('enter')}</Button>}
      >
        {t('lead')}
      </PageHead>
      {entering && <SampleForm onDone={() => setEntering(false)} />}
      <section className={classes.filter} aria-label={t('filter')}>
        {overview.data ? <PeriodPicker shown={overview.data.period} /> : <PeriodPicker />}
        <PlantPicker />
        <SegmentedControl
          aria-label={t('kind')}
          className="no-print"
          value={filter.kind ?? 'all'}
          onChange={choose}
          data={[
            { value: 'all', label: t('both') },
            ...forceKinds.map((kind) => ({ value: kind, label: terms.forceKind[kind] })),
          ]}
        />
      </section>
      <QueryBoundary
        query={overview}
        height={24}
        isEmpty={({ groups }) => groups.length === 0}
        empty={<EmptyNote title={t('none')}>{t('noneText')}</EmptyNote>}
      >
        {({ groups }) => (
          <>
            <GroupTable groups={groups} filter={filter} />
            <p className={classes.quiet}>{t('meaning.trust')}</p>
          </>
        )}
      </QueryBoundary>
    </>
  );
};
