import { useTranslation } from 'react-i18next';
import type { BlindReport as Blind } from '#contracts/evidence.ts';
import { readPhoto } from '#contracts/failures.ts';
import { addressOf } from '#web/ui/http.ts';
import { useTerms } from '#web/ui/language.ts';
import { CheckItem } from '../checklist/check-item.tsx';
import classes from '../checklist/checklist.module.css';

/** What was found, without cause, proof, history and suggestion. */
export const BlindReport = ({ report }: { report: Blind }) => {
  const { t } = useTranslation('evidence');
  const terms = useTerms();
  const facts = [
    ['checklist.housing', report.housing],
    ['checklist.terminal', report.terminal],
    ['checklist.wire', report.wire],
    ['opinions.found', terms.stage[report.found]],
    ['opinions.cavities', report.cavities.join(', ')],
    ['opinions.note', report.note],
  ] as const;
  return (
    <>
      <dl className={classes.head}>
        {facts.map(
          ([name, value]) =>
            value && (
              <div key={name}>
                <dt>{t(name)}</dt>
                <dd>{value}</dd>
              </div>
            ),
        )}
      </dl>
      <h2>{t('opinions.findings')}</h2>
      {report.findings.length === 0 && <p>{t('opinions.noFindings')}</p>}
      <ul className={classes.list}>
        {report.findings.map(({ code, answer }) => (
          <CheckItem key={code} code={code} minutes={null} answer={answer} />
        ))}
      </ul>
      {report.photos.length > 0 && (
        <>
          <h2>{t('opinions.photos')}</h2>
          {report.photos.map((id, place) => (
            <img
              key={id}
              src={addressOf(readPhoto, { params: { id }, query: { size: 'small' } })}
              alt={t('opinions.photo', { number: place + 1 })}
              loading="lazy"
              style={{ maxWidth: '100%', marginRight: '0.5rem' }}
            />
          ))}
        </>
      )}
    </>
  );
};
