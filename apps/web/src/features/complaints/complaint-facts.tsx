import { useTranslation } from 'react-i18next';
import type { Complaint } from '#contracts/complaints.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import classes from './complaints.module.css';

/** What the customer said, as it was taken in. */
export const ComplaintFacts = ({ complaint, zone }: { complaint: Complaint; zone: string | undefined }) => {
  const { t } = useTranslation('complaints');
  const { effect } = useTerms();
  const format = useFormat();
  const day = (value: string | null) => value && format.day(value);
  const facts: [string, string | null][] = [
    [t('field.receivedAt'), format.instant(complaint.receivedAt, zone)],
    [t('field.owner'), complaint.ownerName],
    [t('field.customerPart'), complaint.customerPart],
    [t('field.housing'), complaint.housingCode],
    [t('field.terminal'), complaint.terminalCode],
    [t('field.quantity'), complaint.quantity === null ? null : format.count(complaint.quantity)],
    [t('field.lots'), complaint.lots.join(', ')],
    [t('field.serials'), complaint.serials.join(', ')],
    [t('field.builtOn'), day(complaint.builtOn)],
    [t('field.foundOn'), day(complaint.foundOn)],
    [t('field.effect'), complaint.effect && effect[complaint.effect]],
  ];
  return (
    <section className={classes.section} aria-label={t('facts')}>
      <h2>{t('facts')}</h2>
      <dl className={classes.facts}>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value || '–'}</dd>
          </div>
        ))}
      </dl>
      {complaint.mailText && (
        <details>
          <summary>{t('field.mailText')}</summary>
          <p className={classes.mail}>{complaint.mailText}</p>
        </details>
      )}
    </section>
  );
};
