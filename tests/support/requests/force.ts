import { makeTerminal } from '../master-data.ts';
import { type Example, example, type Ground } from './example.ts';

const body = async ({ db }: Ground, plantId: string) => ({
  plantId,
  kind: 'retention',
  day: '2026-06-10',
  terminalId: (await makeTerminal(db, { minRetentionN: 30 })).id,
  unit: 'N',
  values: [41, 42.5, 39, 44, 40],
});

async function sample(ground: Ground, plantId: string) {
  const made = await ground.admin.post('/api/v1/force', await body(ground, plantId));
  if (made.status !== 201) throw new Error(JSON.stringify(made.body));
  return { params: { id: made.body.id as string }, version: 1, terminalId: made.body.terminalId as string };
}

export const forceRequests: Record<string, Example> = {
  'GET /api/v1/force': example('plant', (_, plantId) => ({ query: `plant=${plantId}&below=false` })),
  'POST /api/v1/force': example('plant', async (ground, plantId) => ({ body: await body(ground, plantId) })),
  'PUT /api/v1/force/:id': example('plant', async (ground, plantId) => {
    const { terminalId, ...of } = await sample(ground, plantId);
    return { ...of, body: { ...(await body(ground, plantId)), terminalId, values: [50, 51] } };
  }),
  'PUT /api/v1/force/:id/void': example('plant', async (ground, plantId) => ({
    ...(await sample(ground, plantId)),
    body: { reason: 'measured at a worn jaw' },
  })),
  'GET /api/v1/analyses/force': example('plant', (_, plantId) => ({ query: `plant=${plantId}` })),
  'GET /api/v1/analyses/force/:id': example('plant', async (ground, plantId) => ({
    params: { id: (await sample(ground, plantId)).terminalId },
    query: `plant=${plantId}&kind=retention`,
  })),
};
