import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Suggestion } from '#contracts/evidence.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { CauseBars } from './cause-bars.tsx';
import classes from './suggestion.module.css';
import { WeightList } from './weight-list.tsx';

/** The suggested cause, how sure it is, why, and on what basis; muted where its record does not earn more. */
export const SuggestionView = ({ suggestion: { causes, weights, model } }: { suggestion: Suggestion }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const terms = useTerms();
  const lead = causes[0];
  if (!lead) return null;
  return (
    <section aria-labelledby="suggested-cause">
      <h3 id="suggested-cause">{t('suggestion.title')}</h3>
      {model.muted && <p className={classes.mutedNote}>{t('suggestion.muted')}</p>}
      <div className={model.muted ? classes.muted : undefined}>
        <p>
          <strong>{t('suggestion.chances')}</strong>{' '}
          <span className={classes.quiet}>{t('suggestion.chancesHelp')}</span>
        </p>
        <CauseBars causes={causes} />
        <p>
          <strong>{t('suggestion.reasons', { cause: terms.cause[lead.cause] })}</strong>{' '}
          <span className={classes.quiet}>
            {t(weights.length > 0 ? 'suggestion.reasonsHelp' : 'suggestion.noReasons')}
          </span>
        </p>
        {weights.length > 0 && <WeightList weights={weights} />}
      </div>
      <p className={classes.quiet}>
        {t(`suggestion.basis.${model.basis}`, {
          group: format.count(model.casesGroup),
          plant: format.count(model.casesPlant),
        })}{' '}
        {t('suggestion.version', { version: format.count(model.version) })}{' '}
        <Anchor inherit underline="always" renderRoot={(props) => <Link {...props} to="/evidence/record" />}>
          {t('suggestion.record')}
        </Anchor>
      </p>
    </section>
  );
};
