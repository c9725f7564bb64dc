import { masterData } from '#contracts/master-data.ts';

import { type Example, example, type Ground, type Request } from './example.ts';

let serial = 0;
const code = () => `EX-${++serial}`;
/** A new day each time, for the dated tables. */
const day = () => new Date(Date.UTC(2001, 0, ++serial)).toISOString().slice(0, 10);

/** A valid new row of each kind. */
export const newRow: Record<string, (plantId: string) => object> = {
  plants: () => ({ code: code(), name: 'Plant', zone: 'Europe/Lisbon', currency: 'EUR' }),
  lines: (plantId) => ({ plantId, code: code(), name: 'Line' }),
  stages: (plantId) => ({ plantId, code: code(), name: 'Stage', common: 'insertion', position: 4 }),
  housings: () => ({
    code: code(),
    name: 'Housing',
    rows: 2,
    columns: 3,
    retentionStyle: 'housing_latch',
    secondaryLock: 'separate',
  }),
  terminals: () => ({ code: code(), name: 'Terminal', wireMinMm2: 0.35, wireMaxMm2: 0.5 }),
  wires: () => ({ code: code(), name: 'Wire', sectionMm2: 0.5 }),
  tools: (plantId) => ({ plantId, code: code(), name: 'Tool', kind: 'applicator' }),
  customers: () => ({ code: code(), name: 'Customer' }),
  'cost-rates': (plantId) => ({ plantId, kind: 'labour', validFrom: day(), hourlyMinor: 4000 }),
  'standard-costs': (plantId) => ({
    plantId,
    stage: 'field',
    disposition: 'replaced',
    validFrom: day(),
    terminalMinor: 900,
  }),
  'exchange-rates': () => ({ base: 'EUR', quote: 'USD', validFrom: day(), rate: '1.1' }),
};

/** An existing row: the plant itself where plants are asked for, so that a foreign one is foreign. */
async function existing({ admin }: Ground, name: string, plantId: string): Promise<Record<string, unknown>> {
  const url = `/api/v1/${name}`;
  const { status, body } =
    name === 'plants' ? await admin.get(`${url}/${plantId}`) : await admin.post(url, newRow[name]!(plantId));
  if (status >= 300) throw new Error(`${url}: ${JSON.stringify(body)}`);
  return body;
}

async function change(ground: Ground, name: string, plantId: string): Promise<Request> {
  const { id, version, retiredAt: _, ...body } = await existing(ground, name, plantId);
  return { params: { id: id as string }, body, version: version as number };
}

const ofKind = ({ name, scope, write }: (typeof masterData)[keyof typeof masterData]): [string, Example][] => {
  const path = `/api/v1/${name}`;
  const reading = scope === 'plant' ? 'plant' : 'shared';
  const writing = write === 'groupData.write' ? 'group' : 'plant';
  return [
    [`GET ${path}`, example(reading, (_, plantId) => (scope === 'plant' ? { query: `plant=${plantId}` } : {}))],
    [
      `GET ${path}/:id`,
      example(reading, async (ground, plantId) => ({
        params: { id: (await existing(ground, name, plantId)).id as string },
      })),
    ],
    [`POST ${path}`, example(writing, (_, plantId) => ({ body: newRow[name]!(plantId) }))],
    [`PUT ${path}/:id`, example(writing, (ground, plantId) => change(ground, name, plantId))],
    [
      `PUT ${path}/:id/retired`,
      example(writing, async (ground, plantId) => ({
        ...(await change(ground, name, plantId)),
        body: { retired: false },
      })),
    ],
  ];
};

export const masterDataRequests: Record<string, Example> = {
  ...Object.fromEntries(Object.values(masterData).flatMap(ofKind)),
  'PUT /api/v1/standard-costs': example('plant', (_, plantId) => ({
    body: {
      plantId,
      validFrom: day(),
      cells: [{ stage: 'field', disposition: 'scrapped', terminalMinor: 100, version: null }],
    },
  })),
  'GET /api/v1/organisation': example('own', () => ({})),
  'PUT /api/v1/organisation': example('group', async ({ admin }) => {
    const { version, demo: _, ...body } = (await admin.get('/api/v1/organisation')).body;
    return { body, version };
  }),
};
