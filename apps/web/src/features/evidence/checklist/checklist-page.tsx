import { Button, Group } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Evidence } from '#contracts/evidence.ts';
import { reportQuery } from '#web/features/failures/queries.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { evidenceQuery } from '../queries.ts';
import { checklistRoute } from '../routes.ts';
import { CheckItem } from './check-item.tsx';
import classes from './checklist.module.css';
import { ReportHead } from './report-head.tsx';

/** A sheet to take to the bench: the findings in the order of what they tell per minute. */
export const ChecklistPage = () => {
  const { t } = useTranslation('evidence');
  const { id } = checklistRoute.useParams();
  const report = useQuery(reportQuery(id));
  const evidence = useQuery(evidenceQuery(id));
  return (
    <>
      <PageHead
        title={t('checklist.title')}
        aside={
          <Group className="no-print">
            <Button leftSection={<IconPrinter size={18} aria-hidden />} onClick={() => window.print()}>
              {t('checklist.print')}
            </Button>
            <Button variant="default" renderRoot={(props) => <Link {...props} to="/failures/$id" params={{ id }} />}>
              {t('checklist.back')}
            </Button>
          </Group>
        }
      >
        {t('checklist.lead')}
      </PageHead>
      <QueryBoundary query={report} height={6}>
        {(data) => <ReportHead report={data} />}
      </QueryBoundary>
      <p>
        <strong>{t('checklist.safe')}</strong>
      </p>
      <QueryBoundary query={evidence} height={30}>
        {(data) => <Sheet evidence={data} />}
      </QueryBoundary>
    </>
  );
};

const Sheet = ({ evidence: { suggestion, findings } }: { evidence: Evidence }) => {
  const { t } = useTranslation('evidence');
  const minutes = suggestion.nextChecks.reduce((sum, check) => sum + check.minutes, 0);
  return (
    <>
      <h2>{t('checklist.toDo')}</h2>
      {minutes === 0 ? <p>{t('checklist.nothing')}</p> : <p>{t('checklist.minutes', { count: minutes })}</p>}
      <ol className={classes.list}>
        {suggestion.nextChecks.map((check) => (
          <CheckItem key={check.finding} code={check.finding} minutes={check.minutes} answer={null} />
        ))}
      </ol>
      {findings.length > 0 && (
        <>
          <h2>{t('checklist.done')}</h2>
          <ul className={classes.list}>
            {findings.map(({ code, answer }) => (
              <CheckItem key={code} code={code} minutes={null} answer={answer} />
            ))}
          </ul>
        </>
      )}
      <div className={classes.signed}>
        <span>{t('checklist.by')}</span>
        <span>{t('checklist.when')}</span>
      </div>
    </>
  );
};
