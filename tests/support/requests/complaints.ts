import type { Asker } from '../app.ts';
import { addReports } from '../facts.ts';
import { makeCustomer } from '../master-data.ts';
import { type Example, example, filtered, type Ground, type Request } from './example.ts';
import { pictureForm } from './reports.ts';

async function body(ground: Ground, plantId: string, more: object = {}) {
  const { id: customerId } = await makeCustomer(ground.db);
  return {
    plantId,
    customerId,
    title: 'Terminal backs out',
    receivedAt: ground.time.now.toISOString(),
    lots: ['L-77'],
    ...more,
  };
}

async function made(ground: Ground, plantId: string, more: object = {}) {
  const answer = await ground.admin.post('/api/v1/complaints', await body(ground, plantId, more));
  if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
  return answer.body as {
    id: string;
    version: number;
    customerId: string;
    clocks: { kind: string; version: number }[];
  };
}

const act = (send: unknown, more: object = {}, prepare?: (ground: Ground, id: string) => Promise<unknown>) =>
  example('plant', async (ground, plantId): Promise<Request> => {
    const { id, version } = await made(ground, plantId, more);
    await prepare?.(ground, id);
    return { params: { id }, version, body: send };
  });
const onClock = (send: unknown, paused = false) =>
  example('plant', async (ground, plantId): Promise<Request> => {
    const { id } = await made(ground, plantId);
    const params = { id, kind: 'cause' };
    if (!paused) return { params, version: 1, body: send };
    await ground.admin.put(`/api/v1/complaints/${id}/clocks/cause/paused`, { reason: 'parts are under way' }, 1);
    return { params, version: 2, body: send };
  });
const answered = async (ground: Ground, id: string) => {
  for (const kind of ['first_reply', 'containment', 'cause', 'corrective_action'])
    await ground.admin.put(`/api/v1/complaints/${id}/clocks/${kind}/answered`, { sent: 'our letter' }, 1);
};

/** Makes whoever asks responsible for product safety there, as far as the role goes. */
const responsible = (ground: Ground, plantId: string, { id: personId }: Asker) =>
  ground.db.prisma.productSafetyDuty.upsert({
    where: { plantId },
    create: { plantId, personId, version: 2 },
    update: { personId },
  });

const photo = async (ground: Ground, plantId: string) => {
  const { id } = await made(ground, plantId);
  const { payload, contentType } = await pictureForm();
  const headers = { 'content-type': contentType };
  const added = await ground.admin.post(`/api/v1/complaints/${id}/photos`, undefined, { payload, headers });
  if (added.status !== 201) throw new Error(JSON.stringify(added.body));
  return { params: { id: added.body.id as string } };
};

export const complaintRequests: Record<string, Example> = {
  'GET /api/v1/complaints': filtered(),
  'GET /api/v1/complaints/similar': example('plant', (_, plantId) => ({ query: `plantId=${plantId}&lots=L-77` })),
  'GET /api/v1/complaints/:id': example('plant', async (ground, plantId) => ({
    params: { id: (await made(ground, plantId)).id },
  })),
  'POST /api/v1/complaints': example('plant', async (ground, plantId, asker) => ({
    body: await body(ground, plantId, { ownerId: asker.id === ground.admin.id ? null : ground.admin.id }),
  })),
  'PUT /api/v1/complaints/:id': example('plant', async (ground, plantId) => {
    const { id, version, customerId } = await made(ground, plantId);
    return { params: { id }, version, body: { ...(await body(ground, plantId)), customerId, title: 'Terminal loose' } };
  }),
  'PUT /api/v1/complaints/:id/safety': act({ safety: true }),
  'PUT /api/v1/complaints/:id/safety-seen': example('plant', async (ground, plantId, asker) => {
    const { id, version } = await made(ground, plantId, { safety: true });
    await responsible(ground, plantId, asker);
    return { params: { id }, version, body: { seen: true } };
  }),
  'PUT /api/v1/complaints/:id/closed': act({ note: 'the customer is content' }, {}, answered),
  'PUT /api/v1/complaints/:id/reopened': example('plant', async (ground, plantId) => {
    const { id, version } = await made(ground, plantId);
    await answered(ground, id);
    await ground.admin.put(`/api/v1/complaints/${id}/closed`, { note: 'the customer is content' }, version);
    return { params: { id }, version: version + 1, body: { reason: 'it came back' } };
  }),
  'PUT /api/v1/complaints/:id/unflag': act({ reason: 'not in a safety circuit' }, { safety: true }),
  'PUT /api/v1/complaints/:id/consents/:consentId': example('plant', async (ground, plantId, asker) => {
    const { id, version } = await made(ground, plantId, { safety: true });
    await responsible(ground, plantId, asker);
    const reason = 'not in a safety circuit';
    const asked = await ground.admin.put(`/api/v1/complaints/${id}/unflag`, { reason }, version);
    return { params: { id, consentId: asked.body.consents[0].id }, version: version + 1, body: { answer: 'given' } };
  }),
  'PUT /api/v1/complaints/:id/clocks/:kind/paused': onClock({ reason: 'parts are under way' }),
  'PUT /api/v1/complaints/:id/clocks/:kind/resumed': onClock({}, true),
  'PUT /api/v1/complaints/:id/clocks/:kind/answered': onClock({ sent: 'our letter' }),
  'PUT /api/v1/complaints/:id/clocks/:kind/owner': example('plant', async (ground, plantId) => {
    const { id } = await made(ground, plantId);
    return { params: { id, kind: 'cause' }, version: 1, body: { ownerId: ground.admin.id } };
  }),
  'POST /api/v1/complaints/:id/reports': example('plant', async (ground, plantId) => {
    const { id } = await made(ground, plantId);
    const [report] = await addReports(ground.db, [{ plantId, foundOn: '2026-06-10' }]);
    return { params: { id }, body: { report } };
  }),
  'POST /api/v1/complaints/:id/new-report': example('plant', async (ground, plantId) => ({
    params: { id: (await made(ground, plantId)).id },
    body: { source: 'customer', quantityFound: 2, foundOn: '2026-06-10' },
  })),
  'DELETE /api/v1/complaints/:id/reports/:reportId': example('plant', async (ground, plantId) => {
    const { id } = await made(ground, plantId);
    const [report] = await addReports(ground.db, [{ plantId, foundOn: '2026-06-10' }]);
    await ground.admin.post(`/api/v1/complaints/${id}/reports`, { report });
    return { params: { id, reportId: report! } };
  }),
  'POST /api/v1/complaints/:id/photos': example('plant', async (ground, plantId) => ({
    params: { id: (await made(ground, plantId)).id },
    ...(await pictureForm()),
  })),
  'GET /api/v1/complaint-photos/:id': example('plant', photo),
  'DELETE /api/v1/complaint-photos/:id': example('plant', photo),
};

const office = [...Array(5).fill([['07:00', '15:00']]), [], []];
export const plantCalendarRequests: Record<string, Example> = {
  'GET /api/v1/plants/:id/calendar': example('plant', (_, id) => ({ params: { id } })),
  'PUT /api/v1/plants/:id/calendar': example('plant', async ({ db }, id) => {
    const calendar = await db.prisma.plantCalendar.findUnique({ where: { plantId: id } });
    const holidays = [{ day: '2026-12-25', name: 'Holiday' }];
    return { params: { id }, version: calendar?.version ?? 1, body: { hours: office, holidays } };
  }),
  'GET /api/v1/plants/:id/product-safety': example('plant', (_, id) => ({ params: { id } })),
  'PUT /api/v1/plants/:id/product-safety': example('plant', async ({ db, admin }, id) => {
    const duty = await db.prisma.productSafetyDuty.findUnique({ where: { plantId: id } });
    return { params: { id }, version: duty?.version ?? 1, body: { personId: admin.id } };
  }),
  'GET /api/v1/plants/:id/colleagues': example('plant', (_, id) => ({ params: { id } })),
};
