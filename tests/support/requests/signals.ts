import { newId } from '#api/platform/ids.ts';
import { type Example, example } from './example.ts';

const body = { key: 'tool|nowhere', reason: 'known since the audit', until: '2026-08-01' };

export const signalRequests: Record<string, Example> = {
  // It names no signal that there is: refused after the permission.
  'POST /api/v1/signals/silences': example('plant', (_, plantId) => ({ query: `plant=${plantId}`, body }), 409),
  'POST /api/v1/signals/silences/:id/end': example('plant', async ({ db }, plantId) => {
    const id = newId();
    const size = { observed: 12, expected: 3, ratio: 4 };
    const said = { label: 'Tool AP-1', reason: body.reason, silencedBy: 'somebody' };
    const data = {
      id,
      plantId,
      key: `tool|${id}`,
      ...said,
      ...size,
      until: new Date(body.until),
      silencedAt: new Date(),
    };
    await db.prisma.signalSilence.create({ data });
    return { params: { id }, version: 1 };
  }),
};
