import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { type Face, gridCavities } from '#contracts/cavities.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { housingQuery } from '../plant-data.ts';
import { cavitiesQuery } from '../queries.ts';
import classes from './cavity-map.module.css';

interface Props {
  filter: Partial<Filter>;
  housing: string;
}
interface Counts {
  withoutCavity: number;
  cavities: readonly { cavity: string; reports: number }[];
}

/** The face of the one housing that the list is about, with reports per cavity; every figure opens its reports. */
export const CavityMap = ({ filter, housing }: Props) => {
  const { t } = useTranslation('failures');
  const { cavityNamed: _, ...rest } = filter;
  const counts = useQuery(cavitiesQuery(rest, housing));
  const face = useQuery(housingQuery(housing)).data;
  return (
    <section aria-labelledby="cavity-map" className={classes.section}>
      <h2 id="cavity-map">{t('map.title')}</h2>
      <QueryBoundary query={counts} height={8}>
        {(data) =>
          face && (
            <>
              <FaceMap face={face} counts={data} filter={rest} />
              <p className={classes.caption}>
                {t('map.caption', { housing: face.code })} <Rest face={face} counts={data} filter={rest} />
              </p>
            </>
          )
        }
      </QueryBoundary>
    </section>
  );
};

const FaceMap = ({ face, counts, filter }: { face: Face; counts: Counts; filter: Partial<Filter> }) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const missing = new Set(face.missingCavities);
  const reports = new Map(counts.cavities.map((it) => [it.cavity, it.reports]));
  const largest = Math.max(1, ...reports.values());
  return (
    <ul className={classes.face} style={{ gridTemplateColumns: `repeat(${face.columns}, minmax(2.75rem, 4.5rem))` }}>
      {gridCavities(face).map((cavity) => {
        if (missing.has(cavity)) return <li key={cavity} aria-hidden data-missing />;
        const count = reports.get(cavity) ?? 0;
        const shade = { '--share': count / largest } as React.CSSProperties;
        return (
          <li key={cavity} style={shade}>
            <span aria-hidden>{cavity}</span>
            {count > 0 && (
              <Link
                to="/failures"
                search={{ ...filter, cavityNamed: [cavity] } as never}
                aria-label={t('map.cell', { cavity, reports: t('list.reports', { count, text: format.count(count) }) })}
              >
                {format.count(count)}
              </Link>
            )}
          </li>
        );
      })}
    </ul>
  );
};

/** What the picture cannot show. */
const Rest = ({ face, counts, filter }: { face: Face; counts: Counts; filter: Partial<Filter> }) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const known = new Set(gridCavities(face).filter((cavity) => !face.missingCavities.includes(cavity)));
  const beyond = counts.cavities.filter(({ cavity }) => !known.has(cavity));
  return (
    <>
      {counts.withoutCavity > 0 && (
        <>
          {t('map.without')}{' '}
          <ReportsLink filter={{ ...filter, cavity: ['none'] }}>{format.count(counts.withoutCavity)}</ReportsLink>{' '}
        </>
      )}
      {beyond.length > 0 && t('map.beyond')}
      {beyond.map(({ cavity, reports }) => (
        <span key={cavity}>
          {' '}
          {cavity} <ReportsLink filter={{ ...filter, cavityNamed: [cavity] }}>{format.count(reports)}</ReportsLink>
        </span>
      ))}
    </>
  );
};
