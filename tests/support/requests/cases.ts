import { newId } from '#api/platform/ids.ts';
import { disciplines, partNames } from '#contracts/case-parts.ts';
import { addVerifiedAction, fullContent, openCase, saveParts } from '../cases.ts';
import { addReports } from '../facts.ts';
import { type Example, example, filtered, type Ground, plain } from './example.ts';

const day = '2026-06-10';
const reportAt = async ({ db }: Ground, plantId: string) =>
  (await addReports(db, [{ plantId, foundOn: day }]))[0] as string;

async function opened(ground: Ground, plantId: string) {
  const failureId = await reportAt(ground, plantId);
  const { id } = await openCase(ground.admin, plantId, { reportIds: [failureId] });
  return { failureId, id };
}
const plan = { symptom: 'loose', emergency: 'stopped', why: '' };

/** A case whose D0 is ready, or signed. */
async function atD0(ground: Ground, plantId: string, signed: boolean) {
  const { id } = await opened(ground, plantId);
  await saveParts(ground.admin, id, { plan });
  if (signed) await ground.admin.put(`/api/v1/cases/${id}/disciplines/0/signature`, {}, 1);
  return { params: { id, discipline: '0' }, version: 1 };
}

/** A safety-relevant case of which the closure waits only for whoever asks. */
async function toBeSignedForSafety(ground: Ground, plantId: string, personId: string) {
  const { db, admin, time } = ground;
  const { id, failureId } = await opened(ground, plantId);
  const { document: _, ...content } = { ...fullContent(failureId), document: null };
  await saveParts(admin, id, content);
  await db.prisma.eightDCase.update({ where: { id }, data: { safety: true } });
  await addVerifiedAction(ground, plantId, id, admin.id);
  await db.prisma.eightDSignature.createMany({
    data: disciplines
      .filter((discipline) => discipline < 8)
      .map((discipline) => ({
        id: newId(),
        caseId: id,
        discipline,
        role: 'quality',
        signedBy: admin.id,
        signer: 'Test',
        signedAt: time.now,
      })),
  });
  const duty = { plantId, personId, version: 1 };
  await db.prisma.productSafetyDuty.upsert({ where: { plantId }, create: duty, update: { personId } });
  return { params: { id }, version: 1 };
}

const boundary = 'form-of-a-test';
const form = (text: string) => ({
  contentType: `multipart/form-data; boundary=${boundary}`,
  payload: Buffer.from(
    `--${boundary}\r\nContent-Disposition: form-data; name="discipline"\r\n\r\n2\r\n--${boundary}\r\nContent-Disposition: form-data; name="file"; filename="note.txt"\r\nContent-Type: text/plain\r\n\r\n${text}\r\n--${boundary}--\r\n`,
  ),
});

async function attached(ground: Ground, plantId: string) {
  const { id } = await opened(ground, plantId);
  const { contentType, payload } = form('measured 1.02 mm');
  const answer = await ground.admin.post(`/api/v1/cases/${id}/attachments`, '', {
    payload,
    headers: { 'content-type': contentType },
  });
  return { params: { id: answer.body.id as string } };
}
const kept = { format: 'pdf', recipient: 'quality@customer.invalid', note: null };

export async function askedPlant(ground: Ground, plantId: string) {
  const { id: caseId } = await opened(ground, ground.own);
  const words = { title: 'Worn applicator', problem: 'p', rootCause: 'r', checkText: 'c' };
  const { id } = await ground.db.prisma.readAcross.create({
    data: { id: newId(), caseId, plantId, why: ['tool_type'], ...words, askedAt: ground.time.now },
  });
  return { params: { id }, version: 1 };
}

const parts = Object.fromEntries(
  partNames.map((name) => [
    `PUT /api/v1/cases/:id/parts/${name}`,
    example('plant', async (ground, plantId) => {
      const { id, failureId } = await opened(ground, plantId);
      return { params: { id }, version: 0, body: { ...fullContent(failureId), document: { team: true } }[name] };
    }),
  ]),
);

export const caseRequests: Record<string, Example> = {
  'GET /api/v1/cases': filtered(),
  'POST /api/v1/cases': example('plant', async (ground, plantId) => ({
    body: { plantId, title: 'Terminals back out', reportIds: [await reportAt(ground, plantId)] },
  })),
  'GET /api/v1/cases/:id': example('plant', async (ground, plantId) => ({
    params: { id: (await opened(ground, plantId)).id },
  })),
  'PUT /api/v1/cases/:id': example('plant', async (ground, plantId) => ({
    ...{ params: { id: (await opened(ground, plantId)).id }, version: 1, body: { title: 'Another title' } },
  })),
  'PUT /api/v1/cases/:id/dropped': example('plant', async (ground, plantId) => ({
    ...{ params: { id: (await opened(ground, plantId)).id }, version: 1, body: { reason: 'opened twice' } },
  })),
  ...parts,
  'PUT /api/v1/cases/:id/disciplines/:discipline/signature': example('plant', async (ground, plantId) => ({
    ...(await atD0(ground, plantId, false)),
    body: {},
  })),
  'PUT /api/v1/cases/:id/product-safety-signature': example('plant', (ground, plantId, asker) =>
    toBeSignedForSafety(ground, plantId, asker.id),
  ),
  'PUT /api/v1/cases/:id/disciplines/:discipline/reopening': example('plant', async (ground, plantId) => ({
    ...(await atD0(ground, plantId, true)),
    body: { reason: 'new facts' },
  })),
  'POST /api/v1/cases/:id/comments': example('plant', async (ground, plantId) => ({
    ...{ params: { id: (await opened(ground, plantId)).id }, body: { discipline: 2, text: 'Look at the reel' } },
  })),
  'GET /api/v1/cases/:id/history': example('plant', async (ground, plantId) => ({
    params: { id: (await opened(ground, plantId)).id },
  })),
  'POST /api/v1/cases/:id/attachments': example('plant', async (ground, plantId) => ({
    ...{ params: { id: (await opened(ground, plantId)).id }, ...form('lances measured') },
  })),
  'GET /api/v1/case-attachments/:id': example('plant', attached),
  'DELETE /api/v1/case-attachments/:id': example('plant', attached),
  'GET /api/v1/cases/:id/document': example('plant', async (ground, plantId) => ({
    ...{ params: { id: (await opened(ground, plantId)).id }, query: 'format=docx' },
  })),
  'GET /api/v1/cases/:id/document/check': example('plant', async (ground, plantId) => ({
    params: { id: (await opened(ground, plantId)).id },
  })),
  'POST /api/v1/cases/:id/documents': example('plant', async (ground, plantId) => ({
    ...{ params: { id: (await opened(ground, plantId)).id }, body: kept },
  })),
  'GET /api/v1/case-documents/:id': example('plant', async (ground, plantId) => {
    const { id } = await opened(ground, plantId);
    return { params: { id: (await ground.admin.post(`/api/v1/cases/${id}/documents`, kept)).body.id as string } };
  }),
  'GET /api/v1/lessons': plain('shared'),
  'GET /api/v1/lessons/offered': example('shared', () => ({ query: 'cause=tooling&text=applicator' })),
  'GET /api/v1/read-across': filtered('&open=true'),
  'PUT /api/v1/read-across/:id/answer': example('plant', async (ground, plantId) => ({
    ...(await askedPlant(ground, plantId)),
    body: { answer: 'does_not_apply', text: 'No such applicator here' },
  })),
};
