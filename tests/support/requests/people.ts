import { type Example, example, type Ground, plain } from './example.ts';

let serial = 0;
const person = () => ({ name: 'Someone New', email: `new${++serial}@test.invalid`, grants: [] });
const first = 'a first password';

async function existing({ admin }: Ground) {
  const { body } = await admin.post('/api/v1/people', { ...person(), password: first });
  return { params: { id: body.id as string }, version: body.version as number };
}

export const peopleRequests: Record<string, Example> = {
  'GET /api/v1/session': plain('own'),
  'DELETE /api/v1/session': plain('own'),
  'PUT /api/v1/session/password': example('own', () => ({ body: { current: 'wrong', next: first } }), 400),
  'PUT /api/v1/session/preferences': example('own', () => ({ body: { name: 'Same', locale: 'en' } })),
  'GET /api/v1/people': plain('group'),
  'POST /api/v1/people': example('group', () => ({ body: { ...person(), password: first } })),
  'PUT /api/v1/people/:id': example('group', async (ground) => ({ ...(await existing(ground)), body: person() })),
  'PUT /api/v1/people/:id/password': example('group', async (ground) => ({
    ...(await existing(ground)),
    body: { password: first },
  })),
  'PUT /api/v1/people/:id/retired': example('group', async (ground) => ({
    ...(await existing(ground)),
    body: { retired: true },
  })),
  'GET /api/v1/tokens': plain('group'),
  'POST /api/v1/tokens': example('group', (_, plantId) => ({
    body: { name: 'Token', grants: [{ role: 'viewer', plantId }] },
  })),
  'DELETE /api/v1/tokens/:id': example('group', async ({ admin }) => {
    const { body } = await admin.post('/api/v1/tokens', {
      name: 'Token',
      grants: [{ role: 'viewer', plantId: null }],
    });
    return { params: { id: body.token.id } };
  }),
};
