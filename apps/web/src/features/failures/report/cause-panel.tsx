import { Button } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Report } from '#contracts/failures.ts';
import { CauseName } from '#web/ui/chart/cause-name.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { CauseForm } from './cause-form.tsx';
import classes from './report.module.css';

type Change = Report['causeChanges'][number];

/** The cause as it stands, and every change of it. */
export const CausePanel = ({ report, maySort }: { report: Report; maySort: boolean }) => {
  const { t } = useTranslation('failures');
  const terms = useTerms();
  const [sorting, setSorting] = useState(false);
  return (
    <section aria-labelledby="cause">
      <h2 id="cause" className={classes.heading}>
        {t('cause.title')}
      </h2>
      {report.cause === null ? (
        <p className={classes.quiet}>{t('cause.none')}</p>
      ) : (
        <dl className={classes.facts}>
          <div>
            <dt>{t('cause.cause')}</dt>
            <dd>
              <CauseName cause={report.cause} />
              {report.subCause && <span> · {terms.subCause[report.subCause]}</span>}
            </dd>
          </div>
          <div>
            <dt>{t('cause.origin')}</dt>
            <dd>{report.origin ? terms.stage[report.origin] : t('cause.originUnknown')}</dd>
          </div>
          {report.proof && (
            <div className={classes.whole}>
              <dt>{t('cause.proof')}</dt>
              <dd>{report.proof}</dd>
            </div>
          )}
        </dl>
      )}
      {maySort &&
        (sorting ? (
          <CauseForm report={report} onDone={() => setSorting(false)} />
        ) : (
          <Button className="no-print" variant={report.cause ? 'default' : 'filled'} onClick={() => setSorting(true)}>
            {t(report.cause ? 'cause.change' : 'cause.sort')}
          </Button>
        ))}
      {report.causeChanges.length > 0 && (
        <details className={classes.history}>
          <summary>{t('cause.history', { count: report.causeChanges.length })}</summary>
          <ol>
            {report.causeChanges.map((change) => (
              <ChangeItem key={change.id} change={change} />
            ))}
          </ol>
        </details>
      )}
    </section>
  );
};

const ChangeItem = ({ change }: { change: Change }) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const terms = useTerms();
  const words = [
    change.cause && terms.cause[change.cause],
    change.subCause && terms.subCause[change.subCause],
    change.origin && t('cause.madeAt', { stage: terms.stage[change.origin] }),
  ].filter(Boolean);
  return (
    <li>
      <strong>{words.join(' · ')}</strong>
      <span className={classes.quiet}>
        {' '}
        {change.actor}, {format.instant(change.at)}
      </span>
      {change.reason && <p>{t('cause.because', { reason: change.reason })}</p>}
      {change.proof && <p>{t('cause.provedBy', { proof: change.proof })}</p>}
    </li>
  );
};
