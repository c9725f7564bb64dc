import type { Asker } from '../app.ts';
import { type Example, example, type Ground, plain, type Request } from './example.ts';
import { form } from './reports.ts';

const file = () =>
  form('file', 'production.csv', 'text/csv', Buffer.from('plant,day,units,terminals\nP1,2026-06-10,1,2\n'));
const query = 'kind=production&source=example';

async function upload(by: Asker): Promise<{ id: string; version: number; layout: object; mapping: object } | null> {
  const { payload, contentType } = file();
  const headers = { 'content-type': contentType };
  const { status, body } = await by.post(`/api/v1/imports?${query}`, '', { payload, headers });
  return status === 201 ? body : null;
}

/** At the own plant the import is the asker's, elsewhere it is somebody else's. */
const import_ = (
  fields: (job: { layout: object; mapping: object }, ground: Ground) => Partial<Request> = () => ({}),
  status?: number,
): Example =>
  example(
    'maker',
    async (ground: Ground, plantId, asker) => {
      const job = (plantId === ground.own && (await upload(asker))) || (await upload(ground.admin));
      if (!job) throw new Error('The administrator could not upload.');
      return { params: { id: job.id }, version: job.version, ...fields(job, ground) };
    },
    status,
  );

export const importRequests: Record<string, Example> = {
  'GET /api/v1/imports': plain('shared'),
  'POST /api/v1/imports': example('shared', () => ({ query, ...file() })),
  'GET /api/v1/imports/:id': import_(),
  'PUT /api/v1/imports/:id/layout': import_(({ layout }) => ({ body: { layout, headerLine: 1 } })),
  'PUT /api/v1/imports/:id/mapping': import_(({ mapping }) => ({ body: mapping })),
  'PUT /api/v1/imports/:id/values': import_((_, { own }) => ({
    body: { values: [{ field: 'line', plantId: own, raw: 'none', as: 'blank' }] },
  })),
  'POST /api/v1/imports/:id/check': import_(),
  'POST /api/v1/imports/:id/commit': import_(() => ({ body: {} }), 409),
  'POST /api/v1/imports/:id/cancel': import_(),
  'GET /api/v1/imports/:id/refused': import_(() => ({}), 404),
};
