import { useTranslation } from 'react-i18next';
import { type Caution, Cautions } from '#web/ui/cautions.tsx';
import { ReportLink } from '../report-link.tsx';
import classes from './record.module.css';

export interface Recorded {
  readonly id: string;
  readonly cautions: readonly Caution[];
}

/** What became of the report just recorded; it has no number while it waits on this device. */
export const Done = ({ recorded, number }: { recorded: Recorded; number: string | undefined }) => {
  const { t } = useTranslation('failures');
  const { id, cautions } = recorded;
  return (
    <>
      <p className={classes.done} role="status">
        {number === undefined ? (
          t('record.kept')
        ) : (
          <>
            {t('record.recorded')} <ReportLink id={id}>{number}</ReportLink>
          </>
        )}
      </p>
      {cautions.length > 0 && <Cautions about={cautions} />}
    </>
  );
};
