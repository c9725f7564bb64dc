import type { Asker } from '../app.ts';
import { type Example, example, filtered, type Ground, plain } from './example.ts';

/** Each request keeps the review of a week of its own. */
let weeksBack = 0;
const nextWeek = () => {
  weeksBack += 1;
  return new Date(Date.UTC(2026, 5, 10) - weeksBack * 7 * 86_400_000).toISOString().slice(0, 10);
};

async function kept({ admin }: Ground, plantId: string): Promise<{ params: { id: string }; version: number }> {
  const { status, body } = await admin.post('/api/v1/reviews', { plant: [plantId], start: nextWeek() });
  if (status >= 300) throw new Error(JSON.stringify(body));
  return { params: { id: body.id }, version: body.version };
}

async function closed(ground: Ground, plantId: string) {
  const { params, version } = await kept(ground, plantId);
  await ground.admin.put(`/api/v1/reviews/${params.id}/closed`, {}, version);
  return { params };
}

export const reviewRequests: Record<string, Example> = {
  'GET /api/v1/reviews': filtered(),
  'GET /api/v1/reviews/week': filtered(),
  'GET /api/v1/reviews/week/document': filtered(),
  'GET /api/v1/reviews/subscriptions': plain('own'),
  'PUT /api/v1/reviews/subscriptions': example('plant', (_, plantId) => ({
    body: { plants: [plantId], group: false },
  })),
  'GET /api/v1/reviews/:id': example('plant', kept),
  'GET /api/v1/reviews/:id/document': example('plant', kept),
  'POST /api/v1/reviews': example('plant', (_, plantId) => ({ body: { plant: [plantId], start: nextWeek() } })),
  'PUT /api/v1/reviews/:id/figures': example('plant', kept),
  'POST /api/v1/reviews/:id/decisions': example('plant', async (ground, plantId, asker: Asker) => ({
    ...(await kept(ground, plantId)),
    body: { plantId, kind: 'corrective', title: 'Replace the worn die', ownerId: asker.id, dueOn: '2026-06-30' },
  })),
  'PUT /api/v1/reviews/:id/closed': example('plant', kept),
  'POST /api/v1/reviews/:id/editions': example('plant', async (ground, plantId) => ({
    ...(await closed(ground, plantId)),
    body: { reason: 'Reports of Friday came late.' },
  })),
};
