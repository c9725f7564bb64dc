/** One valid request for every endpoint, by `METHOD path`; the tests of authorisation and of bad input start from them. */
import type { Endpoint } from '#contracts/shared/endpoint.ts';
import { type Answer, type Asker, createTestApp, type TestApp } from './app.ts';
import { makePlant } from './master-data.ts';
import { actionRequests, noticeRequests } from './requests/actions.ts';
import { analysisRequests } from './requests/analyses.ts';
import { caseRequests } from './requests/cases.ts';
import { complaintRequests, plantCalendarRequests } from './requests/complaints.ts';
import { containmentRequests } from './requests/containment.ts';
import { evidenceRequests } from './requests/evidence.ts';
import type { Example, Ground, Request } from './requests/example.ts';
import { forceRequests } from './requests/force.ts';
import { importRequests } from './requests/imports.ts';
import { masterDataRequests } from './requests/master-data.ts';
import { peopleRequests } from './requests/people.ts';
import { reportRequests } from './requests/reports.ts';
import { reviewRequests } from './requests/review.ts';
import { signalRequests } from './requests/signals.ts';
import { whatIfRequests } from './requests/what-if.ts';

export const requests: Record<string, Example> = {
  ...masterDataRequests,
  ...peopleRequests,
  ...reportRequests,
  ...reviewRequests,
  ...importRequests,
  ...actionRequests,
  ...noticeRequests,
  ...analysisRequests,
  ...signalRequests,
  ...evidenceRequests,
  ...caseRequests,
  ...complaintRequests,
  ...containmentRequests,
  ...plantCalendarRequests,
  ...forceRequests,
  ...whatIfRequests,
};

export const nameOf = ({ method, path }: Endpoint): string => `${method} ${path}`;

/** The endpoints that the app really serves. */
export const servedBy = ({ app }: TestApp): Endpoint[] =>
  app.routeList.flatMap(({ method, endpoint }) => (endpoint && method === endpoint.method ? [endpoint] : []));

export async function send(
  { app }: TestApp,
  { method, path }: Endpoint,
  { params = {}, query, body, version, payload, contentType }: Request,
  headers: Record<string, string> = {},
): Promise<Pick<Answer, 'status' | 'body' | 'headers'>> {
  const filled = path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(params[name] ?? ''));
  const response = await app.inject({
    method,
    url: query ? `${filled}?${query}` : filled,
    headers: {
      ...(contentType && { 'content-type': contentType }),
      ...(body !== undefined && { 'content-type': 'application/json' }),
      ...(version !== undefined && { 'if-match': `"${version}"` }),
      ...headers,
    },
    ...(payload !== undefined ? { payload } : body !== undefined ? { payload: JSON.stringify(body) } : {}),
  });
  const json = String(response.headers['content-type'] ?? '').includes('json');
  return {
    status: response.statusCode,
    body: json && response.body ? response.json() : response.body,
    headers: response.headers,
  };
}

export const asHeaders = ({ cookie }: Asker): Record<string, string> => ({ cookie });

/** An app with an administrator and two plants to aim at. */
export async function createGround(): Promise<Ground> {
  const app = await createTestApp();
  const [own, foreign] = [(await makePlant(app.db)).id, (await makePlant(app.db)).id];
  return { ...app, admin: await app.as('administrator'), own, foreign };
}
