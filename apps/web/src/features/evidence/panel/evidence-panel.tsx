import { Anchor } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Evidence } from '#contracts/evidence.ts';
import type { Report } from '#contracts/failures.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { DecisionPanel } from '../decision/decision-panel.tsx';
import { evidenceQuery } from '../queries.ts';
import { SuggestionView } from '../suggestion/suggestion-view.tsx';
import { FindingParts } from './finding-parts.tsx';
import { NextCheck } from './next-check.tsx';
import classes from './panel.module.css';

/** From evidence to cause, on a report: next best check, findings, suggestion with reasons, decision. */
export const EvidencePanel = ({ report }: { report: Report }) => {
  const { t } = useTranslation('evidence');
  const query = useQuery(evidenceQuery(report.id));
  const open = report.voidedAt === null;
  const mayTake = useMay('failures.write', report.plantId) && open;
  const mayDecide = useMay('failures.sort', report.plantId) && open;
  return (
    <section className={classes.panel} aria-labelledby="evidence">
      <div className={classes.head}>
        <h2 id="evidence">{t('panel.title')}</h2>
        <Anchor
          className="no-print"
          renderRoot={(props) => <Link {...props} to="/failures/$id/checklist" params={{ id: report.id }} />}
        >
          {t('panel.checklist')}
        </Anchor>
      </div>
      <QueryBoundary query={query} height={30}>
        {(evidence) => (
          <div className={classes.columns}>
            <div>
              {open && <NextCheck reportId={report.id} evidence={evidence} mayTake={mayTake} />}
              {open && !mayTake && <p className={classes.quiet}>{t('panel.nobody')}</p>}
              <FindingParts reportId={report.id} evidence={evidence} mayTake={mayTake} />
            </div>
            <div>
              <Announced evidence={evidence} />
              <Cautions about={['suggestion']} />
              <SuggestionView suggestion={evidence.suggestion} />
              <DecisionPanel report={report} evidence={evidence} mayDecide={mayDecide} />
            </div>
          </div>
        )}
      </QueryBoundary>
    </section>
  );
};

/** Says aloud what leads after each answer. */
const Announced = ({ evidence: { suggestion } }: { evidence: Evidence }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const terms = useTerms();
  const lead = suggestion.causes[0];
  return (
    <span role="status" className="visually-hidden">
      {lead && t('panel.lead', { cause: terms.cause[lead.cause], chance: format.chance(lead.probability) })}
    </span>
  );
};
