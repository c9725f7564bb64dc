import { addReports } from '../facts.ts';
import { type Example, example, filtered, type Ground, type Request } from './example.ts';

const body = (plantId: string, more: object = {}) => ({
  plantId,
  title: 'Low lances',
  reelLots: ['L-77'],
  builtFrom: '2026-05-01',
  builtTo: '2026-06-01',
  ...more,
});

async function made(ground: Ground, plantId: string): Promise<{ id: string; version: number }> {
  const answer = await ground.admin.post('/api/v1/containment', body(plantId));
  if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
  return answer.body;
}
const clean = { from: '2026-06-01', reason: 'new reel, lances measured' };
const act = (send: unknown, prepare?: (ground: Ground, id: string, version: number) => Promise<number>) =>
  example('plant', async (ground, plantId): Promise<Request> => {
    const { id, version } = await made(ground, plantId);
    return { params: { id }, version: (await prepare?.(ground, id, version)) ?? version, body: send };
  });
const cleaned = async ({ admin }: Ground, id: string, version: number) =>
  (await admin.put(`/api/v1/containment/${id}/clean-point`, clean, version)).body.version as number;
const result = { place: 'stock', day: '2026-06-10', inspected: 50, found: 0, sample: true };

/** An alert for the plant, of a containment at a third one that has the same lot. */
async function alert(ground: Ground, plantId: string): Promise<Request> {
  await addReports(ground.db, [{ plantId, foundOn: '2026-06-02', reelLot: 'L-78' }]);
  const from = plantId === ground.own ? ground.foreign : ground.own;
  const made = await ground.admin.post('/api/v1/containment', body(from, { reelLots: ['L-78'] }));
  const { id, version } = await ground.db.prisma.containmentAlert.findFirstOrThrow({
    where: { containmentId: made.body.id, plantId },
  });
  return { params: { id }, version, body: { affected: false, answer: 'none of it left in stock' } };
}

export const containmentRequests: Record<string, Example> = {
  'GET /api/v1/containment': filtered(),
  'GET /api/v1/containment/sample-plan': example('shared', () => ({ query: 'lot=1000' })),
  'GET /api/v1/containment/alerts': filtered(),
  'PUT /api/v1/containment/alerts/:id': example('plant', alert),
  'GET /api/v1/containment/:id': example('plant', async (ground, plantId) => ({
    params: { id: (await made(ground, plantId)).id },
  })),
  'POST /api/v1/containment': example('plant', ({ admin }, plantId) => ({
    body: body(plantId, { ownerId: admin.id }),
  })),
  'PUT /api/v1/containment/:id': example('plant', async (ground, plantId) => {
    const { id, version } = await made(ground, plantId);
    return { params: { id }, version, body: body(plantId, { title: 'Lances too low' }) };
  }),
  'PUT /api/v1/containment/:id/places': act({ places: [{ place: 'stock', quantity: 500 }] }),
  'PUT /api/v1/containment/:id/clean-point': act(clean),
  'PUT /api/v1/containment/:id/closed': act({ note: 'all sorted' }, cleaned),
  'PUT /api/v1/containment/:id/reopened': act({ reason: 'one more found' }, async (ground, id, version) => {
    const ready = await cleaned(ground, id, version);
    return (await ground.admin.put(`/api/v1/containment/${id}/closed`, { note: 'all sorted' }, ready)).body.version;
  }),
  'POST /api/v1/containment/:id/sortings': example('plant', async (ground, plantId) => ({
    params: { id: (await made(ground, plantId)).id },
    body: result,
  })),
  'PUT /api/v1/containment/:id/sortings/:sortingId/withdrawn': example('plant', async (ground, plantId) => {
    const { id } = await made(ground, plantId);
    const sorted = (await ground.admin.post(`/api/v1/containment/${id}/sortings`, result)).body;
    return {
      params: { id, sortingId: sorted.sortings[0].id },
      version: sorted.version,
      body: { reason: 'typed twice' },
    };
  }),
};
