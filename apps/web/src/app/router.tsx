/** The table of contents: every page of the dashboard. */
import { createRouter } from '@tanstack/react-router';
import { actionRoute, actionsRoute } from '#web/features/actions/routes.ts';
import { auditRoute } from '#web/features/audit/routes.ts';
import { caseRoute, casesRoute } from '#web/features/cases/routes.ts';
import { causesRoute } from '#web/features/causes/routes.ts';
import { chartsRoute } from '#web/features/charts/routes.ts';
import { complaintRoute, deskRoute, newComplaintRoute } from '#web/features/complaints/routes.ts';
import {
  alertsRoute,
  containmentRoute,
  containmentsRoute,
  newContainmentRoute,
} from '#web/features/containment/routes.ts';
import { escapesRoute } from '#web/features/escapes/routes.ts';
import { checklistRoute, opinionRoute, opinionsRoute, trackRecordRoute } from '#web/features/evidence/routes.ts';
import { failuresRoute, newReportRoute, recordRoute, reportRoute } from '#web/features/failures/routes.ts';
import { forceRoute, forceTerminalRoute } from '#web/features/force/routes.ts';
import { gatesRoute } from '#web/features/gates/routes.ts';
import { importRoute, importsRoute } from '#web/features/imports/routes.ts';
import { lessonsRoute } from '#web/features/lessons/routes.ts';
import { kindRoute, masterDataRoute } from '#web/features/master-data/routes.ts';
import { maturityRoute } from '#web/features/maturity/routes.ts';
import { noticesRoute } from '#web/features/notices/routes.ts';
import { peopleRoute, tokensRoute } from '#web/features/people/routes.ts';
import { productionRoute } from '#web/features/production/routes.ts';
import { keptReviewRoute, reviewRoute } from '#web/features/review/routes.ts';
import { accountRoute, firstPasswordRoute, signInRoute } from '#web/features/session/routes.ts';
import { signalsRoute } from '#web/features/signals/routes.ts';
import { weekRoute } from '#web/features/week/routes.ts';
import { editWhatIfRoute, newWhatIfRoute, whatIfRoute, whatIfsRoute } from '#web/features/what-if/routes.ts';
import { parseSearch, stringifySearch } from '#web/ui/search.ts';
import { PagePending } from './page-pending.tsx';
import { queryClient } from './query-client.ts';
import { root, signedIn } from './roots.ts';

const routeTree = root.addChildren([
  signInRoute,
  firstPasswordRoute,
  signedIn.addChildren([
    failuresRoute,
    newReportRoute,
    reportRoute,
    checklistRoute,
    recordRoute,
    forceRoute,
    forceTerminalRoute,
    casesRoute,
    caseRoute,
    lessonsRoute,
    productionRoute,
    importsRoute,
    importRoute,
    masterDataRoute,
    kindRoute,
    peopleRoute,
    tokensRoute,
    auditRoute,
    weekRoute,
    reviewRoute,
    keptReviewRoute,
    causesRoute,
    chartsRoute,
    signalsRoute,
    escapesRoute,
    gatesRoute,
    maturityRoute,
    whatIfsRoute,
    newWhatIfRoute,
    whatIfRoute,
    editWhatIfRoute,
    trackRecordRoute,
    opinionsRoute,
    opinionRoute,
    deskRoute,
    newComplaintRoute,
    complaintRoute,
    containmentsRoute,
    newContainmentRoute,
    alertsRoute,
    containmentRoute,
    actionsRoute,
    actionRoute,
    noticesRoute,
    accountRoute,
  ]),
]);

export const router = createRouter({
  routeTree,
  context: { queryClient },
  parseSearch,
  stringifySearch,
  defaultPreload: 'intent',
  defaultPendingComponent: PagePending,
  defaultPendingMs: 400,
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
