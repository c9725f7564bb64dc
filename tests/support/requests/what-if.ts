import { type Example, example, filtered, type Ground } from './example.ts';

export const option = {
  key: 'check',
  kind: 'push_click_pull',
  name: 'Push-click-pull check',
  onceMinor: 50_000,
  yearlyMinor: 10_000,
  effects: [{ cause: 'partial_seat', low: 0.3, likely: 0.5, high: 0.8 }],
};
export const input = { options: [option], together: ['check'], horizonYears: 3, seed: 7 };

const period = 'from=2026-05-01&to=2026-06-15';
export const scenario = (plantId: string) => ({ name: 'Check on line 2', query: `plant=${plantId}&${period}`, input });

async function kept({ admin }: Ground, plantId: string) {
  const { body } = await admin.post('/api/v1/what-if', scenario(plantId));
  return { params: { id: body.id as string }, version: 1 };
}

export const whatIfRequests: Record<string, Example> = {
  'GET /api/v1/analyses/maturity': filtered(),
  'GET /api/v1/analyses/gates': filtered(),
  'POST /api/v1/analyses/what-if': example('plant', (_, plantId) => ({
    query: `plant=${plantId}&${period}`,
    body: input,
  })),
  'GET /api/v1/what-if': filtered(),
  'POST /api/v1/what-if': example('plant', (_, plantId) => ({ body: scenario(plantId) })),
  'GET /api/v1/what-if/:id': example('plant', kept),
  'PUT /api/v1/what-if/:id': example('plant', async (ground, plantId) => ({
    ...(await kept(ground, plantId)),
    body: { ...scenario(plantId), name: 'Check on both lines' },
  })),
  'PUT /api/v1/what-if/:id/retired': example('plant', async (ground, plantId) => ({
    ...(await kept(ground, plantId)),
    body: { retired: true },
  })),
};
