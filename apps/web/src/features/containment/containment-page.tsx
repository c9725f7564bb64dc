import { Anchor } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Containment } from '#contracts/containment.ts';
import { ActionsPanel } from '#web/features/actions/actions-panel.tsx';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { PlainWords } from '#web/ui/plain-words.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { CleanSection } from './clean-section.tsx';
import classes from './containment.module.css';
import { PlacesSection } from './places-section.tsx';
import { PlanSection } from './plan-section.tsx';
import { containmentQuery } from './queries.ts';
import { containmentRoute } from './routes.ts';
import { scopeFilter } from './scope-filter.ts';
import { SortingSection } from './sorting-section.tsx';

export const ContainmentPage = () => {
  const { id } = containmentRoute.useParams();
  const query = useQuery(containmentQuery(id));
  return <QueryBoundary query={query}>{(containment) => <Shown containment={containment} />}</QueryBoundary>;
};

const Shown = ({ containment }: { containment: Containment }) => {
  const { t } = useTranslation('containment');
  const mayChange = useMay('containment.write', containment.plantId);
  const mayWrite = mayChange && containment.closedAt === null;
  return (
    <>
      <PageHead title={`${containment.number} ${containment.title}`}>
        {t('scope', { scope: scopeWords(containment) })}
        {containment.complaintId && containment.complaintNumber && (
          <>
            {' · '}
            <Anchor
              underline="always"
              inherit
              renderRoot={(props) => <Link {...props} to="/complaints/$id" params={{ id: containment.complaintId! }} />}
            >
              {containment.complaintNumber}
            </Anchor>
          </>
        )}
      </PageHead>
      <PopulationSection containment={containment} />
      <PlacesSection containment={containment} mayWrite={mayWrite} />
      <SortingSection containment={containment} mayWrite={mayWrite} />
      <PlanSection containment={containment} />
      <CleanSection containment={containment} mayWrite={mayWrite} mayChange={mayChange} />
      <PlantsSection containment={containment} />
      <div className={classes.section}>
        <ActionsPanel plantId={containment.plantId} origin={{ containmentId: containment.id }} kind="containment" />
      </div>
    </>
  );
};

const scopeWords = ({ housingIds, terminalIds, lineIds, toolIds, reelLots, housingLots, names }: Containment) =>
  [
    ...[...housingIds, ...terminalIds, ...lineIds, ...toolIds].map((id) => names[id] ?? ''),
    ...reelLots,
    ...housingLots,
  ].join(', ');

const PopulationSection = ({ containment }: { containment: Containment }) => {
  const { t } = useTranslation('containment');
  const format = useFormat();
  const { population: it, builtFrom, builtTo } = containment;
  const number = (value: number | null) => (value === null ? t('unknown') : format.count(value));
  return (
    <section className={classes.section} aria-label={t('population')}>
      <h2>{t('population')}</h2>
      <p>{t('built', { from: format.day(builtFrom), to: format.day(builtTo) })}</p>
      <Stats>
        <Stat label={t('units')} figure={number(it.units)} note={it.units === null ? t('noProduction') : undefined} />
        <Stat
          label={t('suspect')}
          figure={
            it.narrower && containment.suspectQuantity === null
              ? t('atMost', { count: number(it.suspect) as never })
              : number(it.suspect)
          }
          note={containment.suspectBasis ?? undefined}
        />
        <Stat label={t('accounted')} figure={number(it.stated)} />
        <Stat label={t('unaccounted')} figure={number(it.unaccounted)} />
        <Stat
          label={t('reportsFound')}
          figure={format.count(it.reports)}
          link={<ReportsLink filter={scopeFilter(containment)}>{t('openReports')}</ReportsLink>}
        />
      </Stats>
      <PlainWords>{t(it.narrower ? 'meaning.narrower' : 'meaning.built')}</PlainWords>
    </section>
  );
};

const PlantsSection = ({ containment }: { containment: Containment }) => {
  const { t } = useTranslation('containment');
  const format = useFormat();
  return (
    <section className={classes.section} aria-label={t('plants')}>
      <h2>{t('plants')}</h2>
      <p>{t('plantsMeaning')}</p>
      {containment.plants.length === 0 && <p>{t('noPlants')}</p>}
      <ul className={classes.list}>
        {containment.plants.map((it) => (
          <li key={it.plantId}>
            <strong>{it.plantCode}</strong>{' '}
            {t('sharesSince', {
              shares: it.shares.map((thing) => t(`shares.${thing}`)).join(', '),
              day: format.day(it.toldAt.slice(0, 10)),
            })}{' '}
            {it.answer ? `${t(it.affected ? 'affected' : 'notAffected')}: ${it.answer}` : t('noAnswer')}
          </li>
        ))}
      </ul>
    </section>
  );
};
