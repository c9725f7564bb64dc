import { useTranslation } from 'react-i18next';
import type { Evidence } from '#contracts/evidence.ts';
import { useFormat } from '#web/ui/language.ts';
import { useFindingTerms } from '../use-findings.ts';
import { FindingItem } from './finding-item.tsx';
import classes from './panel.module.css';

interface Props {
  reportId: string;
  evidence: Evidence;
  mayTake: boolean;
}

/** The check that is expected to tell most per minute, ready to be answered. */
export const NextCheck = ({ reportId, evidence: { suggestion }, mayTake }: Props) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const terms = useFindingTerms();
  const [best, ...rest] = suggestion.nextChecks;
  const others = rest.slice(0, 3);
  return (
    <section className={classes.check} aria-labelledby="next-check">
      <h3 id="next-check">{t(suggestion.enough && best ? 'check.enoughStill' : 'check.title')}</h3>
      {!best && <p>{t('check.none')}</p>}
      {suggestion.enough && (
        <p>
          <strong>{t('check.enough')}</strong>
        </p>
      )}
      {best && (
        <>
          <FindingItem
            key={best.finding}
            reportId={reportId}
            code={best.finding}
            finding={undefined}
            minutes={best.minutes}
            mayTake={mayTake}
          />
          <p className={classes.quiet}>
            {t('check.why', {
              bits: format.number(best.gain, { maximumFractionDigits: 2 }),
              minutes: format.number(best.minutes),
            })}{' '}
            {best.couldChangeLead && t('check.couldChange')}
          </p>
          {others.length > 0 && (
            <p className={classes.quiet}>
              {t('check.others')}:{' '}
              {format.list(
                others.map(({ finding, minutes }) => `${terms[finding].name} (${t('finding.minutes', { minutes })})`),
              )}
            </p>
          )}
        </>
      )}
    </section>
  );
};
