import sharp from 'sharp';
import { addReports } from '../facts.ts';
import { reportBody } from '../reports.ts';
import { type Example, example, filtered, type Ground } from './example.ts';

const report = async ({ db }: Ground, plantId: string) => {
  const [id] = await addReports(db, [{ plantId, foundOn: '2026-06-10' }]);
  return { params: { id: id as string }, version: 1 };
};

const cost = { category: 'parts', basis: 'booked', incurredOn: '2026-06-10', currency: 'EUR', amountMinor: 500 };

const picture = sharp({ create: { width: 8, height: 8, channels: 3, background: '#888' } })
  .jpeg()
  .toBuffer();

/** A form with one file in it. */
export function form(field: string, fileName: string, type: string, content: Buffer) {
  const boundary = '----escape-ledger-test';
  const head = `--${boundary}\r\nContent-Disposition: form-data; name="${field}"; filename="${fileName}"\r\nContent-Type: ${type}\r\n\r\n`;
  return {
    payload: Buffer.concat([Buffer.from(head), content, Buffer.from(`\r\n--${boundary}--\r\n`)]),
    contentType: `multipart/form-data; boundary=${boundary}`,
  };
}
export const pictureForm = async () => form('photo', 'photo.jpg', 'image/jpeg', await picture);

async function existingPhoto(ground: Ground, plantId: string) {
  const { params } = await report(ground, plantId);
  const { payload, contentType } = await pictureForm();
  const { body } = await ground.admin.post(`/api/v1/failures/${params.id}/photos`, '', {
    payload,
    headers: { 'content-type': contentType },
  });
  return { params: { id: body.id as string } };
}

const production = (plantId: string) => ({ plantId, day: '2026-06-10', units: 10, terminals: 100 });

export const reportRequests: Record<string, Example> = {
  'GET /api/v1/failures': filtered(),
  'GET /api/v1/failures/count': filtered(),
  'GET /api/v1/failures/export': filtered('&format=csv'),
  'GET /api/v1/failures/marks': example('plant', (_, plantId) => ({ query: `plantId=${plantId}&field=station` })),
  'GET /api/v1/failures/cavities': filtered('&housing=018f4c7e-6b1a-7000-8000-000000000001'),
  'GET /api/v1/failures/:id': example('plant', report),
  'POST /api/v1/failures': example('plant', (_, plantId) => ({ body: reportBody(plantId) })),
  'PUT /api/v1/failures/:id': example('plant', async (ground, plantId) => ({
    ...(await report(ground, plantId)),
    body: reportBody(plantId),
  })),
  'PUT /api/v1/failures/:id/cause': example('plant', async (ground, plantId) => ({
    ...(await report(ground, plantId)),
    body: { cause: 'tooling' },
  })),
  'PUT /api/v1/failures/:id/void': example('plant', async (ground, plantId) => ({
    ...(await report(ground, plantId)),
    body: { reason: 'entered twice' },
  })),
  'POST /api/v1/failures/:id/costs': example('plant', async (ground, plantId) => ({
    ...(await report(ground, plantId)),
    body: cost,
  })),
  'DELETE /api/v1/failures/:id/costs/:costId': example('plant', async (ground, plantId) => {
    const { params } = await report(ground, plantId);
    const { body } = await ground.admin.post(`/api/v1/failures/${params.id}/costs`, cost);
    return { params: { ...params, costId: body.costItems[0].id } };
  }),
  'POST /api/v1/failures/:id/photos': example('plant', async (ground, plantId) => ({
    ...(await report(ground, plantId)),
    ...(await pictureForm()),
  })),
  'GET /api/v1/photos/:id': example('plant', existingPhoto),
  'DELETE /api/v1/photos/:id': example('plant', existingPhoto),
  'GET /api/v1/saved-filters': example('own', () => ({})),
  'POST /api/v1/saved-filters': example('own', () => ({ body: { page: 'failures', name: 'Mine', query: '?x=1' } })),
  'DELETE /api/v1/saved-filters/:id': example('own', async (_, __, asker) => {
    const { body } = await asker.post('/api/v1/saved-filters', { page: 'failures', name: 'Gone', query: '' });
    return { params: { id: body.id } };
  }),
  'GET /api/v1/production': filtered(),
  'POST /api/v1/production': example('plant', (_, plantId) => ({ body: { rows: [production(plantId)] } })),
  'PUT /api/v1/production/:id': example('plant', async ({ admin }, plantId) => {
    await admin.post('/api/v1/production', { rows: [production(plantId)] });
    const { body } = await admin.get(`/api/v1/production?plant=${plantId}`);
    return { params: { id: body.items[0].id }, version: body.items[0].version, body: { units: 11, terminals: 110 } };
  }),
};
