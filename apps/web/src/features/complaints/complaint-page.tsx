import { Anchor, Button, Group } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import * as contract from '#contracts/complaints.ts';
import { ActionsPanel } from '#web/features/actions/actions-panel.tsx';
import { call } from '#web/ui/http.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { AskForm } from './ask-form.tsx';
import { ClocksSection } from './clocks-section.tsx';
import { ComplaintFacts } from './complaint-facts.tsx';
import classes from './complaints.module.css';
import { PhotosSection } from './photos-section.tsx';
import { complaintQuery, useWrite } from './queries.ts';
import { ReportsSection } from './reports-section.tsx';
import { complaintRoute } from './routes.ts';
import { SafetySection } from './safety-section.tsx';
import { SimilarList } from './similar-list.tsx';
import { soughtBy } from './sought.ts';

export const ComplaintPage = () => {
  const { id } = complaintRoute.useParams();
  const query = useQuery(complaintQuery(id));
  return <QueryBoundary query={query}>{(complaint) => <Shown complaint={complaint} />}</QueryBoundary>;
};

const Shown = ({ complaint }: { complaint: contract.Complaint }) => {
  const zone = usePlants().find(({ id }) => id === complaint.plantId)?.zone;
  const mayChange = useMay('complaints.write', complaint.plantId);
  const mayWrite = mayChange && complaint.closedAt === null;
  return (
    <>
      <PageHead title={`${complaint.number} ${complaint.title}`}>
        {[complaint.customerCode, complaint.customerRef, complaint.plantCode].filter(Boolean).join(' · ')}
      </PageHead>
      <SafetySection complaint={complaint} zone={zone} mayWrite={mayWrite} />
      <ClocksSection complaint={complaint} zone={zone} mayWrite={mayWrite} />
      <ComplaintFacts complaint={complaint} zone={zone} />
      <ReportsSection complaint={complaint} mayWrite={mayWrite} />
      <ContainmentLinks complaint={complaint} />
      <div className={classes.section}>
        <ActionsPanel plantId={complaint.plantId} origin={{ complaintId: complaint.id }} kind="containment" />
      </div>
      <PhotosSection complaint={complaint} mayWrite={mayWrite} />
      <SimilarList sought={soughtBy(complaint, complaint.id)} />
      {mayChange && <Closing complaint={complaint} />}
    </>
  );
};

const ContainmentLinks = ({ complaint }: { complaint: contract.Complaint }) => {
  const { t } = useTranslation('complaints');
  const mayOpen = useMay('containment.write', complaint.plantId) && complaint.closedAt === null;
  return (
    <section className={classes.section} aria-label={t('containments')}>
      <h2>{t('containments')}</h2>
      {complaint.containments.length === 0 && <p>{t('noContainments')}</p>}
      <ul className={classes.cases}>
        {complaint.containments.map((it) => (
          <li key={it.id}>
            <Anchor
              underline="always"
              inherit
              renderRoot={(props) => <Link {...props} to="/containment/$id" params={{ id: it.id }} />}
            >
              {it.number}
            </Anchor>{' '}
            {it.title} {it.closed && t('containmentClosed')}
          </li>
        ))}
      </ul>
      {mayOpen && (
        <Button
          variant="default"
          className="no-print"
          renderRoot={(props) => <Link {...props} to="/containment/new" search={{ complaint: complaint.id }} />}
        >
          {t('openContainment')}
        </Button>
      )}
    </section>
  );
};

const Closing = ({ complaint }: { complaint: contract.Complaint }) => {
  const { t } = useTranslation('complaints');
  const [asking, setAsking] = useState(false);
  const closed = complaint.closedAt !== null;
  const of = { params: { id: complaint.id }, version: complaint.version };
  const change = useWrite((text: string) =>
    closed
      ? call(contract.reopenComplaint, { ...of, body: { reason: text } })
      : call(contract.closeComplaint, { ...of, body: { note: text } }),
  );
  const title = t(closed ? 'reopen' : complaint.safety ? 'askClose' : 'close');
  return (
    <section className={`${classes.section} no-print`} aria-label={t('closing')}>
      <h2>{t('closing')}</h2>
      {closed && <p>{t('closedBecause', { by: complaint.closedBy, note: complaint.closingNote })}</p>}
      {complaint.blocks.length > 0 && (
        <ul className={classes.cases}>
          {complaint.blocks.map((block) => (
            <li key={block}>{t(`block.${block}`)}</li>
          ))}
        </ul>
      )}
      <Group>
        <Button variant="default" disabled={complaint.blocks.length > 0} onClick={() => setAsking(true)}>
          {title}
        </Button>
      </Group>
      {asking && (
        <AskForm
          title={title}
          label={t('reason')}
          pending={change.isPending}
          error={change.error}
          onDone={() => setAsking(false)}
          onText={(text) => change.mutate(text, { onSuccess: () => setAsking(false) })}
        />
      )}
    </section>
  );
};
