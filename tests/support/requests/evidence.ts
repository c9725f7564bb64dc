import type { Asker } from '../app.ts';
import { addReports } from '../facts.ts';
import { type Example, example, filtered, type Ground, plain } from './example.ts';

const report = async ({ db }: Ground, plantId: string) => {
  const [id] = await addReports(db, [{ plantId, foundOn: '2026-06-10' }]);
  return { params: { id: id as string }, version: 1 };
};
const decision = { cause: 'tooling', origin: 'termination', proof: 'crimp height off', reason: 'seen on the part' };

/** A second opinion that waits at the plant, on a decision of the administrator. */
async function opinion(ground: Ground, plantId: string) {
  const { db, admin } = ground;
  const { params, version } = await report(ground, plantId);
  const confirmed = await admin.put(`/api/v1/failures/${params.id}/confirmation`, decision, version);
  if (confirmed.status >= 300) throw new Error(JSON.stringify(confirmed.body));
  const asked = { plant: [plantId], from: '2026-06-01', to: '2026-06-30', sample: 200 };
  await admin.post('/api/v1/evidence/opinions', asked);
  const { id } = await db.prisma.opinion.findFirstOrThrow({ where: { plantId, failureId: params.id } });
  return { params: { id } };
}

/** One that whoever asks has taken, if they may. */
async function taken(ground: Ground, plantId: string, asker: Asker) {
  const waiting = await opinion(ground, plantId);
  await asker.put(`/api/v1/evidence/opinions/${waiting.params.id}/taken`, {}, 1);
  return waiting;
}

export const evidenceRequests: Record<string, Example> = {
  'GET /api/v1/failures/:id/evidence': example('plant', report),
  'PUT /api/v1/failures/:id/evidence': example('plant', async (ground, plantId) => ({
    ...(await report(ground, plantId)),
    body: { findings: [{ code: 'lance_flat', answer: 'yes' }], remove: [] },
  })),
  'PUT /api/v1/failures/:id/confirmation': example('plant', async (ground, plantId) => ({
    ...(await report(ground, plantId)),
    body: decision,
  })),
  'GET /api/v1/failures/:id/alike': example('plant', report),
  'POST /api/v1/evidence/batch': example('plant', async (ground, plantId) => ({
    body: { ids: [(await report(ground, plantId)).params.id], decision },
  })),
  'POST /api/v1/evidence/opinions': example('plant', (_, plantId) => ({
    body: { plant: [plantId], from: '2026-06-01', to: '2026-06-30', sample: 5 },
  })),
  'GET /api/v1/evidence/opinions': plain('shared'),
  'GET /api/v1/evidence/opinions/:id': example('hidden', taken),
  'PUT /api/v1/evidence/opinions/:id/taken': example('plant', opinion),
  'PUT /api/v1/evidence/opinions/:id': example('plant', async (ground, plantId, asker) => ({
    ...(await taken(ground, plantId, asker)),
    body: { cause: 'tooling' },
  })),
  'GET /api/v1/evidence/record': filtered(),
  'GET /api/v1/evidence/record/cases': filtered('&suggested=tooling&confirmed=tooling'),
};
