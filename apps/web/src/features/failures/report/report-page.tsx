import { Button, Group } from '@mantine/core';
import { IconPencil } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Report } from '#contracts/failures.ts';
import { EvidencePanel } from '#web/features/evidence/panel/evidence-panel.tsx';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { reportQuery } from '../queries.ts';
import { reportRoute } from '../routes.ts';
import { CausePanel } from './cause-panel.tsx';
import { CostsPanel } from './costs-panel.tsx';
import { EditReport } from './edit-report.tsx';
import { Facts } from './facts.tsx';
import { Notices } from './notices.tsx';
import { PhotosPanel } from './photos-panel.tsx';
import classes from './report.module.css';
import { VoidReport } from './void-report.tsx';

export const ReportPage = () => {
  const { t } = useTranslation('failures');
  const { id } = reportRoute.useParams();
  const query = useQuery(reportQuery(id));
  return (
    <>
      <PageHead title={query.data?.number ?? t('report.title')} aside={query.data && <Tools report={query.data} />} />
      <QueryBoundary query={query} height={30}>
        {(report) => <ReportView key={report.id} report={report} />}
      </QueryBoundary>
    </>
  );
};

const Tools = ({ report }: { report: Report }) => {
  const { t } = useTranslation('failures');
  const mayVoid = useMay('failures.void', report.plantId) && report.voidedAt === null;
  const mayAudit = useMay('audit.read', report.plantId);
  return (
    <Group gap="sm" className="no-print">
      {mayAudit && (
        <Button
          variant="subtle"
          renderRoot={(props) => <Link {...props} to="/audit" search={{ entity: ['failure'], entityId: report.id }} />}
        >
          {t('report.audit')}
        </Button>
      )}
      {mayVoid && <VoidReport report={report} />}
    </Group>
  );
};

const ReportView = ({ report }: { report: Report }) => {
  const { t } = useTranslation('failures');
  const [editing, setEditing] = useState(false);
  const open = report.voidedAt === null;
  const mayWrite = useMay('failures.write', report.plantId) && open;
  const maySort = useMay('failures.sort', report.plantId) && open;
  if (editing) return <EditReport report={report} onDone={() => setEditing(false)} />;
  return (
    <>
      <Notices report={report} />
      <div className={classes.columns}>
        <section aria-labelledby="what-was-found">
          <Group justify="space-between" mb="xs">
            <h2 id="what-was-found" className={classes.heading}>
              {t('report.facts')}
            </h2>
            {mayWrite && (
              <Button
                variant="default"
                className="no-print"
                leftSection={<IconPencil size={16} aria-hidden />}
                onClick={() => setEditing(true)}
              >
                {t('report.edit')}
              </Button>
            )}
          </Group>
          <Facts report={report} />
          <PhotosPanel report={report} mayWrite={mayWrite} />
        </section>
        <div>
          <CausePanel report={report} maySort={maySort} />
          <CostsPanel report={report} mayWrite={mayWrite} />
        </div>
      </div>
      <EvidencePanel report={report} />
    </>
  );
};
