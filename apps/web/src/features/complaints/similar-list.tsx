import { Anchor } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { useFormat, useTerms } from '#web/ui/language.ts';
import classes from './complaints.module.css';
import { type Sought, similarQuery } from './queries.ts';

/** Possible duplicates and similar past cases, each with why it is offered. */
export const SimilarList = ({ sought }: { sought: Sought | null }) => {
  const { t } = useTranslation('complaints');
  const { cause } = useTerms();
  const format = useFormat();
  const found = useQuery(similarQuery(sought)).data ?? [];
  return (
    <section className={classes.section} aria-label={t('similar.title')}>
      <h2>{t('similar.title')}</h2>
      {found.length === 0 ? (
        <p>{t('similar.none')}</p>
      ) : (
        <ul className={classes.cases}>
          {found.map((one) => (
            <li key={one.id}>
              {one.duplicate && <strong>{t('similar.duplicate')} </strong>}
              <Anchor
                underline="always"
                inherit
                renderRoot={(props) =>
                  one.kind === 'complaint' ? (
                    <Link {...props} to="/complaints/$id" params={{ id: one.id }} />
                  ) : (
                    <Link {...props} to="/failures/$id" params={{ id: one.id }} />
                  )
                }
              >
                {one.number}
              </Anchor>{' '}
              {format.day(one.on)} {one.title}
              {one.cause && ` · ${cause[one.cause as keyof typeof cause]}`}
              <br />
              {t('similar.why', { why: one.shares.map((word) => t(`similar.${word}`)).join(', ') })}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
};
