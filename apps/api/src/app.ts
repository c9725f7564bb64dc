import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import multipart from '@fastify/multipart';
import rateLimit from '@fastify/rate-limit';
import Fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import type { Database } from '#db/client.ts';
import type { Config } from './config.ts';
import { refuseUnstorableText } from './platform/bad-input.ts';
import { handleErrors, refuseUnreadable } from './platform/error-handler.ts';
import { reportHealth } from './platform/health.ts';
import { newId } from './platform/ids.ts';
import { describeApi } from './platform/openapi.ts';
import { listRoutes } from './platform/route-list.ts';
import { identify } from './platform/session.ts';
import { serveWeb } from './platform/static-web.ts';
import './platform/types.ts';
import { actions } from './features/actions/actions.routes.ts';
import { analyses } from './features/analyses/analyses.routes.ts';
import { audit } from './features/audit/audit.routes.ts';
import { cases } from './features/cases/cases.routes.ts';
import { charts } from './features/charts/charts.routes.ts';
import { complaints } from './features/complaints/complaints.routes.ts';
import { containment } from './features/containment/containment.routes.ts';
import { evidence } from './features/evidence/evidence.routes.ts';
import { failures } from './features/failures/failures.routes.ts';
import { force } from './features/force/force.routes.ts';
import { gates } from './features/gates/gates.routes.ts';
import { imports } from './features/imports/imports.routes.ts';
import { lessons } from './features/lessons/lessons.routes.ts';
import { masterData } from './features/master-data/master-data.routes.ts';
import { maturity } from './features/maturity/maturity.routes.ts';
import { notices } from './features/notices/notices.routes.ts';
import { people } from './features/people/people.routes.ts';
import { photos } from './features/photos/photos.routes.ts';
import { plantCalendar } from './features/plant-calendar/plant-calendar.routes.ts';
import { production } from './features/production/production.routes.ts';
import { review } from './features/review/review.routes.ts';
import { signals } from './features/signals/signals.routes.ts';
import { week } from './features/week/week.routes.ts';
import { whatIf } from './features/what-if/what-if.routes.ts';

export interface AppOptions {
  config: Config;
  db: Database;
  clock: () => Date;
}

/** The features, in the order of the navigation. */
const features: ((app: FastifyInstance) => void)[] = [
  week,
  review,
  analyses,
  charts,
  signals,
  maturity,
  gates,
  whatIf,
  actions,
  failures,
  evidence,
  complaints,
  containment,
  cases,
  lessons,
  photos,
  production,
  force,
  imports,
  masterData,
  plantCalendar,
  people,
  notices,
  audit,
];

/** The whole service, not yet listening. */
export async function buildApp({ config, db, clock }: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({
    logger: { level: config.logLevel },
    trustProxy: config.trustProxy,
    bodyLimit: 2 * 1024 * 1024,
    genReqId: newId,
    routerOptions: { maxParamLength: 200 },
    ajv: { customOptions: {} },
    frameworkErrors: refuseUnreadable,
  });
  app.decorate('config', config);
  app.decorate('db', db);
  app.decorate('clock', clock);
  listRoutes(app);
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  handleErrors(app);

  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        connectSrc: ["'self'"],
        upgradeInsecureRequests: null,
      },
    },
    hsts: false,
  });
  await app.register(cookie);
  await app.register(rateLimit, { global: false });
  await app.register(multipart, { limits: { files: 1, fields: 20, fieldSize: 10_000 }, throwFileSizeLimit: true });
  await describeApi(app);
  identify(app);
  refuseUnstorableText(app);
  reportHealth(app);
  for (const feature of features) feature(app);
  await serveWeb(app);
  return app;
}
