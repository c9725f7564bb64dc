import { type Example, example, filtered, type Ground, plain } from './example.ts';
import { form } from './reports.ts';

const plan = {
  scope: { cause: 'tooling' },
  before: { from: '2026-01-01', to: '2026-06-01' },
  cleanPoint: '2026-06-20',
  reduction: 0.8,
};

/** An action of the plant, owned by a manager of it. */
async function action(ground: Ground, plantId: string, more: object = {}) {
  const { id: ownerId } = await ground.as('manager', [plantId]);
  const input = { plantId, kind: 'corrective', title: 'Change the applicator', ownerId, dueOn: '2026-07-01', ...more };
  const made = await ground.admin.post('/api/v1/actions', input);
  if (made.status !== 201) throw new Error(JSON.stringify(made.body));
  return { params: { id: made.body.id as string }, version: made.body.version as number, input };
}
const target = async (ground: Ground, plantId: string) => {
  const { params, version } = await action(ground, plantId);
  return { params, version };
};
const withEvidence = async (ground: Ground, plantId: string) => {
  const made = await target(ground, plantId);
  const added = await ground.admin.post(`/api/v1/actions/${made.params.id}/evidence`, { text: 'changed on the line' });
  return { ...made, evidence: added.body.id as string };
};
const textFile = () => form('file', 'note.txt', 'text/plain', Buffer.from('measured 12.1'));

async function carriedOut(ground: Ground, plantId: string) {
  const { params, version } = await withEvidence(ground, plantId);
  const url = `/api/v1/actions/${params.id}/state`;
  const owner = await ground.as('manager', [plantId]);
  const moved = await owner.put(url, { state: 'carried_out' }, version);
  if (moved.status !== 200) throw new Error(JSON.stringify(moved.body));
  return { params, version: moved.body.version as number };
}

export const actionRequests: Record<string, Example> = {
  'GET /api/v1/actions': filtered(),
  'GET /api/v1/actions/count': filtered(),
  'GET /api/v1/actions/export': filtered('&format=csv'),
  'GET /api/v1/actions/judged-effects': filtered(),
  'POST /api/v1/actions/effect-preview': example('plant', (_, plantId) => ({ body: { plantId, ...plan } })),
  'GET /api/v1/actions/:id': example('plant', target),
  'POST /api/v1/actions': example('plant', async ({ as }, plantId) => ({
    body: {
      plantId,
      kind: 'preventive',
      title: 'Protect the leads',
      ownerId: (await as('engineer', [plantId])).id,
      dueOn: '2026-07-01',
    },
  })),
  'PUT /api/v1/actions/:id': example('plant', async (ground, plantId) => {
    const { params, version, input } = await action(ground, plantId);
    return { params, version, body: { ...input, title: 'Change it soon' } };
  }),
  'PUT /api/v1/actions/:id/state': example('plant', async (ground, plantId) => ({
    ...(await target(ground, plantId)),
    body: { state: 'under_way' },
  })),
  'PUT /api/v1/actions/:id/verification': example('plant', async (ground, plantId) => ({
    ...(await carriedOut(ground, plantId)),
    body: { passed: true, note: 'seen on the line' },
  })),
  'GET /api/v1/actions/:id/effect': example('plant', target),
  'PUT /api/v1/actions/:id/effect': example('plant', async (ground, plantId) => ({
    ...(await target(ground, plantId)),
    body: plan,
  })),
  'POST /api/v1/actions/:id/evidence': example('plant', async (ground, plantId) => ({
    params: (await target(ground, plantId)).params,
    body: { text: 'changed on the line' },
  })),
  'POST /api/v1/actions/:id/files': example('plant', async (ground, plantId) => ({
    params: (await target(ground, plantId)).params,
    ...textFile(),
  })),
  'GET /api/v1/action-files/:id': example('plant', async (ground, plantId) => {
    const { params } = await target(ground, plantId);
    const { payload, contentType } = textFile();
    const added = await ground.admin.post(`/api/v1/actions/${params.id}/files`, '', {
      payload,
      headers: { 'content-type': contentType },
    });
    return { params: { id: added.body.id as string } };
  }),
  'DELETE /api/v1/action-evidence/:id': example('plant', async (ground, plantId) => ({
    params: { id: (await withEvidence(ground, plantId)).evidence },
  })),
};

export const noticeRequests: Record<string, Example> = {
  'GET /api/v1/notices': plain('own'),
  'GET /api/v1/notices/count': plain('own'),
  'PUT /api/v1/notices/:id/read': example('own', async ({ db }, _, { id: personId }) => {
    const id = crypto.randomUUID();
    await db.prisma.notice.create({
      data: {
        id,
        personId,
        kind: 'action_due_today',
        key: id,
        facts: {},
        link: '/',
        at: new Date('2026-06-15T10:00:00Z'),
      },
    });
    return { params: { id } };
  }),
  'PUT /api/v1/notices/read': plain('own'),
  'GET /api/v1/notices/preferences': plain('own'),
  'PUT /api/v1/notices/preferences': example('own', () => ({ body: { mail: false } })),
  'PUT /api/v1/calendar-feed': plain('own'),
  'DELETE /api/v1/calendar-feed': plain('own'),
  'GET /api/v1/mail': plain('group'),
  'PUT /api/v1/mail/retry': plain('group'),
};
