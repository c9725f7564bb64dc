import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allows, type Permission, type Role, roles } from '#contracts/permissions.ts';
import type { Endpoint } from '#contracts/shared/endpoint.ts';
import { type Asker, createTestApp } from '#tests/support/app.ts';
import type { Ground, Scope } from '#tests/support/requests/example.ts';
import { asHeaders, createGround, nameOf, requests, send, servedBy } from '#tests/support/requests.ts';

/** Only to learn the routes, which are needed before the tests begin. */
const catalogue = await (async () => {
  const app = await createTestApp();
  const endpoints = servedBy(app);
  const bare = app.app.routeList.filter(({ endpoint, path }) => endpoint === null && path.startsWith('/api'));
  await app.close();
  return { endpoints, bare };
})();
const guarded = catalogue.endpoints.filter(({ access }) => access !== 'public');

let ground: Ground;
let own: string;
let foreign: string;

beforeAll(async () => {
  ground = await createGround();
  ({ own, foreign } = ground);
});
afterAll(() => ground.close());

/** A role at the own plant; the same and a viewer's at the foreign one; the role for all plants. */
const reaches = ['own plant', 'own plant, viewer at the other', 'all plants'] as const;
type Reach = (typeof reaches)[number];
async function person(role: Role, reach: Reach): Promise<Asker> {
  const asker = await ground.as(role, reach === 'all plants' ? undefined : [own]);
  if (reach === 'own plant, viewer at the other')
    await ground.db.prisma.roleGrant.create({
      data: { id: crypto.randomUUID(), personId: asker.id, role: 'viewer', plantId: foreign },
    });
  return asker;
}

type Verdict = 'done' | 403 | 404;

/** What the permission table and the plants say, without a look at the routes. */
function expected(access: Endpoint['access'], scope: Scope, role: Role, reach: Reach, atForeign: boolean): Verdict {
  if (access === 'signed-in') return 'done';
  const permission = access as Permission;
  const everywhere = reach === 'all plants';
  const viewing = reach === 'own plant, viewer at the other';
  const somewhere = allows(permission, role) || (viewing && allows(permission, 'viewer'));
  if (!somewhere) return 403;
  if (scope === 'group') return everywhere ? 'done' : 403;
  if (scope === 'maker' || scope === 'hidden') return everywhere || !atForeign ? 'done' : 404;
  if (scope !== 'plant' || everywhere) return 'done';
  if (!atForeign) return allows(permission, role) ? 'done' : 403;
  if (!viewing) return 404;
  return allows(permission, 'viewer') ? 'done' : 403;
}

describe('every route', () => {
  it('has a contract, or is one of the few pages about the API itself', () => {
    expect(
      [...new Set(catalogue.bare.map(({ path }) => path))].filter((path) => !path.startsWith('/api/docs')),
    ).toEqual(['/api/v1/openapi.json']);
  });
  it('asks for a sign-in, but for these', () => {
    const open = catalogue.endpoints.filter(({ access }) => access === 'public').map(nameOf);
    expect(open.sort()).toEqual(['GET /api/v1/calendar-feed/:file', 'GET /api/v1/health', 'POST /api/v1/session']);
  });
  it('has an example to be tried with', () => {
    expect(guarded.map(nameOf).filter((name) => !requests[name])).toEqual([]);
    expect(Object.keys(requests).filter((name) => !guarded.some((endpoint) => nameOf(endpoint) === name))).toEqual([]);
  });
});

describe.each(
  guarded.filter((endpoint) => requests[nameOf(endpoint)]).map((endpoint) => [nameOf(endpoint), endpoint] as const),
)('%s', (name, endpoint) => {
  const { scope, make, status = 0 } = requests[name]!;

  it.each(roles)('serves the role %s where it holds', async (role) => {
    const surprises: string[] = [];
    for (const reach of reaches) {
      for (const plantId of [own, foreign]) {
        const asker = await person(role, reach);
        const answer = await send(ground, endpoint, await make(ground, plantId, asker), asHeaders(asker));
        const wanted = expected(endpoint.access, scope, role, reach, plantId === foreign);
        const right =
          wanted === 'done'
            ? answer.status === status || (answer.status >= 200 && answer.status < 300)
            : answer.status === wanted;
        const where = plantId === own ? 'own' : 'foreign';
        if (!right)
          surprises.push(`${reach}, at ${where}: ${wanted}, got ${answer.status} ${JSON.stringify(answer.body)}`);
      }
    }
    expect(surprises).toEqual([]);
  });

  it('refuses strangers, ended sessions, and who has yet to choose a password', async () => {
    const admin = await ground.as('administrator');
    const request = await make(ground, own, admin);
    expect((await send(ground, endpoint, request)).body).toMatchObject({ status: 401, code: 'sign_in_required' });
    const token = { authorization: `Bearer ${'x'.repeat(43)}` };
    expect((await send(ground, endpoint, request, token)).body).toMatchObject({ status: 401, code: 'token_invalid' });

    const { db } = ground;
    await db.prisma.person.update({ where: { id: admin.id }, data: { mustChangePassword: true } });
    if (!endpoint.path.startsWith('/api/v1/session'))
      expect((await send(ground, endpoint, request, asHeaders(admin))).body).toMatchObject({
        status: 403,
        code: 'password_change_required',
      });
    await db.prisma.person.update({ where: { id: admin.id }, data: { mustChangePassword: false } });
    await db.prisma.session.updateMany({ where: { personId: admin.id }, data: { expiresAt: ground.time.now } });
    expect((await send(ground, endpoint, request, asHeaders(admin))).status).toBe(401);
  });
});

describe('lists', () => {
  it('show rows of the own plants only, though others have some', async () => {
    const { admin } = ground;
    const lists = ['lines', 'stages', 'tools', 'cost-rates', 'standard-costs', 'failures', 'production', 'actions'];
    for (const name of lists) {
      for (const plantId of [own, foreign]) {
        const example = requests[`POST /api/v1/${name}`]!;
        const { body } = await example.make(ground, plantId, admin);
        expect((await admin.post(`/api/v1/${name}`, body)).status, name).toBeLessThan(300);
      }
      const viewer = await ground.as('viewer', [own]);
      const rows: { plantId: string }[] = (await viewer.get(`/api/v1/${name}?limit=200`)).body.items;
      expect(new Set(rows.map(({ plantId }) => plantId)), name).toEqual(new Set([own]));
    }
  });
});
